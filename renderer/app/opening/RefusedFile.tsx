import { Problems } from '../../ui/Problems.tsx'
import { Sheet } from '../../ui/Sheet.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { useIncoming } from './incoming.ts'

/** Reasons told; a file that is altogether something else has hundreds. */
const MOST_TOLD = 6

/** The sheet of one file may tell its end when the next has been refused already, which is then still to be read. */
const close = (id: string): void => {
  if (useIncoming.getState().refused?.id === id) useIncoming.setState({ refused: null })
}

/** Over whatever screen there is: which file was not opened, and why. */
export const RefusedFile = () => {
  const t = useTexts()
  const refused = useIncoming((incoming) => incoming.refused)
  if (!refused) return null
  const { id, file, problems } = refused
  return (
    <Sheet key={id} title={t('jobFile:cannot', { file })} onClose={() => close(id)}>
      <Problems problems={problems.slice(0, MOST_TOLD)} />
      {problems.length > MOST_TOLD && <p>{t('jobFile:more', { count: problems.length - MOST_TOLD })}</p>}
    </Sheet>
  )
}
