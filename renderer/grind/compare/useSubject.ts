import { useEffect, useState } from 'react'
import type { Job } from '../../../geometry/job.ts'
import { failed, ok, problem, type Result } from '../../../geometry/result.ts'
import { checkJob } from '../../app/jobParts.ts'
import { useApp } from '../../app/store.ts'
import { call } from '../../app/transport.ts'
import { type Choice, useComparing } from './comparing.ts'

/** What is to be ground beside the own job. */
export interface Subject {
  readonly job: Job
  /** Where it stands whatever the own one does; beyond its end: at its end; null: at the same sweep. */
  readonly fixedStep: number | null
}

const IRON = 'iron:'

/** @returns the tool's id where an iron is chosen */
export const ironOf = (choice: Choice): string | null => (choice.startsWith(IRON) ? choice.slice(IRON.length) : null)

const gone = failed(problem('comparedGone'))

/** The job of another iron, read again when its records change; null while it is being read. */
const useIronJob = (toolId: string | null): Result<Job> | null => {
  const [read, setRead] = useState<Result<Job> | null>(null)
  const tool = useApp((app) => app.tools.find(({ id }) => id === toolId) ?? null)
  useEffect(() => {
    if (!tool) return
    let awaited = true
    void call('job.open', { toolId: tool.id }).then((opened) => {
      if (awaited) setRead(opened.ok ? ok(opened.value.document) : opened)
    })
    return () => {
      awaited = false
    }
  }, [tool])
  return tool ? read : gone
}

const orGone = (job: Job | undefined, fixedStep: number | null = null): Result<Subject> =>
  job ? ok({ job, fixedStep }) : gone

const useUnchecked = (choice: Choice, own: Job): Result<Subject> | null => {
  const inHand = useApp((app) => app.job)
  const { kept, before } = useComparing()
  const iron = useIronJob(ironOf(choice))
  if (choice === 'before') return orGone(before?.jobId === inHand?.id ? before?.job : undefined)
  if (choice === 'own') return orGone(inHand?.document)
  if (choice === 'kept') return orGone(kept?.job)
  if (choice === 'keptMoment') return orGone(kept?.job, kept?.step ?? null)
  if (choice === 'start') return orGone(own, 0)
  if (choice === 'end') return orGone(own, Number.POSITIVE_INFINITY)
  return iron?.ok ? ok({ job: iron.value, fixedStep: null }) : iron
}

/** @returns what the choice means now, checked like any job; null while it is being read */
export const useSubject = (choice: Choice, own: Job): Result<Subject> | null => {
  const subject = useUnchecked(choice, own)
  if (!subject?.ok) return subject
  const checked = checkJob(subject.value.job)
  return checked.ok ? ok({ ...subject.value, job: checked.value }) : checked
}
