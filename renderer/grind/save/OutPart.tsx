import type { ReactNode } from 'react'
import type { Problem } from '../../../geometry/result.ts'
import { Problems } from '../../ui/Problems.tsx'

interface OutPartProps {
  readonly heading: string
  readonly sentence: string
  readonly problems?: readonly Problem[]
  readonly children: ReactNode
}

/** One kind of file: what it is, what can be chosen, its key, and what went wrong. */
export const OutPart = ({ heading, sentence, problems = [], children }: OutPartProps) => (
  <section className="out-part">
    <h2>{heading}</h2>
    <p className="out-sentence">{sentence}</p>
    {children}
    <Problems problems={problems} />
  </section>
)
