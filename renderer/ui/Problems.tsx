import type { Problem } from '../../geometry/result.ts'
import { problemSentence, useTexts } from './texts.tsx'

/** What was refused, a sentence each, read out as it comes. @param of what they are about, put before each */
export const Problems = ({ problems, of }: { readonly problems: readonly Problem[]; readonly of?: string }) => {
  const t = useTexts()
  return problems.map((found) => (
    <p key={`${found.code} ${found.path}`} className="caution" role="alert">
      {of === undefined ? '' : `${of}: `}
      {problemSentence(t, found)}
    </p>
  ))
}
