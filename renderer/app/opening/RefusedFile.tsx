import { Problems } from '../../ui/Problems.tsx'
import { Sheet } from '../../ui/Sheet.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { useIncoming } from './incoming.ts'

/** Reasons told; a file that is altogether something else has hundreds. */
const MOST_TOLD = 6

const close = (): void => useIncoming.setState({ refused: null })

/** Over whatever screen there is: which file was not opened, and why. */
export const RefusedFile = () => {
  const t = useTexts()
  const refused = useIncoming((incoming) => incoming.refused)
  if (!refused) return null
  const { file, problems } = refused
  return (
    <Sheet title={t('jobFile:cannot', { file })} onClose={close}>
      <Problems problems={problems.slice(0, MOST_TOLD)} />
      {problems.length > MOST_TOLD && <p>{t('jobFile:more', { count: problems.length - MOST_TOLD })}</p>}
    </Sheet>
  )
}
