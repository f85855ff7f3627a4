import './write/writeTexts.ts'
import { refOf } from '../../geometry/lesson/refs.ts'
import { quantityOfPlace } from '../../geometry/lesson/state.ts'
import { useTexts } from '../ui/texts.tsx'

/** Places whose quantity stands for more than one of them. */
const ownNames = ['bench.strokesCorner', 'bench.strokesHalfway', 'bench.strokesMiddle']

/** @returns what a place of a lesson's state is called */
export const usePlaceNames = (): ((place: string) => string) => {
  const t = useTexts()
  return (place) => {
    if (ownNames.includes(place)) return t(`teach:bench.${place.split('.')[1]}`)
    const quantity = quantityOfPlace(place)
    if (quantity === null) return place
    const name = t(`quantities:${quantity}.name`)
    return place.startsWith('second.') ? t('teach:second', { name }) : name
  }
}

/** @returns what a figure of a lesson is called, whichever state it is of */
export const useRefNames = (): ((ref: string) => string) => {
  const t = useTexts()
  const placeName = usePlaceNames()
  return (text) => {
    const { figure = null, place = text } = refOf(text) ?? {}
    return figure ? t(`write:figure.${figure}`) : placeName(place.replace(/^job\./, ''))
  }
}
