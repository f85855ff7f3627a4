import { FigureText } from '../ui/FigureText.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { askewOf } from './reading.ts'
import type { Shown } from './shown.ts'
import { deservedText, shapeWordOf } from './words.ts'

/** Relief, radius and shape of a measured edge, each with how sure it is. */
export const ShownFigures = ({ shown }: { readonly shown: Shown }) => (
  <>
    <Relief shown={shown} />
    <Radius shown={shown} />
    <Shape shown={shown} />
  </>
)

/** Errors below this need a third decimal to be more than nought (mm). */
const FINE_MM = 0.01

const Relief = ({ shown: { edge, stepMm, method, residualSdMm } }: { readonly shown: Shown }) => {
  const t = useTexts()
  const figures = useFigures()
  const askew = askewOf(edge)
  const relief = figures.of('measure.leafMm', edge.reliefMm)
  const written = (mm: number) => figures.of('measure.leafMm', mm).text
  const figure = askew ? { ...relief, text: `${written(askew[0])} – ${written(askew[1])}` } : relief
  const sure = askew
    ? t('measure:shown.sureAskew')
    : t(`measure:shown.sure.${residualSdMm === null && method === 'points' ? 'few' : method}`, {
        step: figures.inWords(stepMm, 'mm', 2),
        residual: figures.inWords(residualSdMm ?? 0, 'mm', 3),
      })
  const error = t('measure:shown.error', {
    error: figures.inWords(edge.standardErrorMm, 'mm', edge.standardErrorMm < FINE_MM ? 3 : 2),
  })
  return (
    <FigureText
      figure={figure}
      size={askew ? 'large' : 'far'}
      found
      name={<strong>{t('measure:shown.relief')}</strong>}
      note={`${sure}; ${error}`}
    />
  )
}

/** With so great a share of the relief in doubt the radius might be any. */
const UNTOLD_SHARE = 0.5

const Radius = ({ shown: { edge } }: { readonly shown: Shown }) => {
  const t = useTexts()
  const figures = useFigures()
  const errorShare = edge.standardErrorMm / edge.reliefMm
  if (edge.radiusMm === null || errorShare >= UNTOLD_SHARE || askewOf(edge)) return null
  const { text, unit } = figures.of('aim.edgeRadiusMm', edge.radiusMm)
  const deserved = deservedText(text, errorShare)
  return <FigureText figure={{ text: deserved, unit }} size="large" name={t('measure:shown.radius')} />
}

const PERCENT = 100

const Shape = ({ shown: { edge, method } }: { readonly shown: Shown }) => {
  const t = useTexts()
  const word = shapeWordOf(edge)
  const unknown =
    method !== 'leaves' ? method : askewOf(edge) ? 'askew' : edge.halfwayMm === null ? 'notTaken' : 'coarse'
  const ratio = edge.reliefMm === 0 ? 0 : (edge.halfwayMm ?? 0) / edge.reliefMm
  const share = `${Math.round(ratio * PERCENT)} %`
  return (
    <FigureText
      figure={{ text: t(`measure:shape.${word}`), unit: '' }}
      name={t('measure:shown.shape')}
      note={
        method === 'leaves' || word === 'unknown'
          ? t(`measure:shapeNote.${word === 'unknown' ? unknown : word}`, { share })
          : t(`measure:shapeNote.fits.${word}`)
      }
    />
  )
}
