import { useTexts } from '../ui/texts.tsx'
import { openHelp } from './useHelp.ts'

/** The way from something the program says to what help has on it. @param code of the problem */
export const ProblemHelp = ({ code }: { readonly code: string }) => {
  const t = useTexts()
  return (
    <button type="button" className="word" onClick={() => openHelp(`problems.${code}`)}>
      {t('common:problemHelp')}
    </button>
  )
}
