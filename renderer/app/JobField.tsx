import type { Job } from '../../geometry/job.ts'
import type { QuantityPath } from '../../geometry/quantities.ts'
import { FigureField, type FigureFieldProps } from '../ui/FigureField.tsx'
import { problemSentence, useTexts } from '../ui/texts.tsx'
import { useApp } from './store.ts'
import { forgetRefused } from './storeJob.ts'

/** @returns the sentence for a refused edit of this field, or for what is wrong at its place; null when all is well */
export const useProblemAt = (path: string): string | null => {
  const t = useTexts()
  const at = useApp((app) => app.problemAt)
  const problems = useApp((app) => app.problems)
  const found = at === null ? problems.filter((each) => each.path === path) : at === path ? problems : []
  return found.length === 0 ? null : found.map((each) => problemSentence(t, each)).join(' ')
}

interface JobFieldProps extends Omit<FigureFieldProps, 'quantity' | 'onCommit' | 'problem' | 'onRestore'> {
  readonly path: QuantityPath
  /** The job with the typed figure in it. */
  readonly change: (job: Job, value: number | null) => Job
}

/** A figure of the job in hand: a good one is kept and solved at once, a bad one stays in the field with its reason. */
export const JobField = ({ path, change, ...rest }: JobFieldProps) => {
  const editJob = useApp((app) => app.editJob)
  return (
    <FigureField
      {...rest}
      quantity={path}
      problem={useProblemAt(path)}
      onRestore={forgetRefused}
      onCommit={(value) => editJob((job) => change(job, value), { at: path })}
    />
  )
}
