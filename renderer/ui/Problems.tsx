import type { Problem } from '../../geometry/result.ts'
import { ProblemHelp } from '../help/ProblemHelp.tsx'
import { problemSentence, useTexts } from './texts.tsx'

/** What was refused, a sentence each, read out as it comes, with the way to help. @param of what they are about, put before each */
export const Problems = ({ problems, of }: { readonly problems: readonly Problem[]; readonly of?: string }) => {
  const t = useTexts()
  return problems.map((found) => (
    <div key={`${found.code} ${found.path}`} className="caution">
      <p>
        <span role="alert">
          {of === undefined ? '' : `${of}: `}
          {problemSentence(t, found)}
        </span>{' '}
        <ProblemHelp code={found.code} />
      </p>
    </div>
  ))
}
