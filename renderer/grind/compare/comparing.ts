import { create } from 'zustand'
import type { Job } from '../../../geometry/job.ts'
import type { Problem } from '../../../geometry/result.ts'
import { useApp } from '../../app/store.ts'
import type { Moment, Running } from '../useLiveGrind.ts'
import type { Together } from './together.ts'

/** A job put by, with the moment it stood at. */
export interface Kept {
  readonly job: Job
  readonly step: number
  readonly sweep: number
  /** The iron it is of, code and name. */
  readonly iron: string
  /** The corner of it that carries the dot. */
  readonly dot: 'left' | 'right'
  /** Part of the run was made by hand, which the job does not hold. */
  readonly byHand: boolean
}

/** What the job on the model can be compared with; an iron by its tool's id. */
export type Choice = 'none' | 'before' | 'own' | 'kept' | 'keptMoment' | 'start' | 'end' | `iron:${string}`

/** The other grind, once it has shown its first moment. */
export interface Other {
  readonly running: Running
  readonly together: Together
}

interface Comparing {
  readonly choice: Choice
  readonly beside: boolean
  /** The glass and the bevel show the other one. */
  readonly turned: boolean
  readonly kept: Kept | null
  /** The job in hand as it was before its last change. */
  readonly before: { readonly jobId: string; readonly job: Job } | null
  readonly other: Other | null
  /** Why the other cannot be ground, or not to its end. */
  readonly problems: readonly Problem[]
}

const nothing = { choice: 'none', turned: false, other: null, problems: [] } as const

/** As long as the window is open; nothing of it is written anywhere. */
export const useComparing = create<Comparing>()(() => ({ ...nothing, beside: false, kept: null, before: null }))

/** Another choice is a grind of its own; the one before it is put away. */
export const choose = (choice: Choice): void => useComparing.setState({ ...nothing, choice })

export const putAway = (): void => choose('none')

/** Puts the job on the model by, and the moment it stands at. */
export const keepThis = ({ job }: Running, moment: Moment): void => {
  const { tool } = useApp.getState()
  const kept: Kept = {
    job,
    step: moment.step,
    sweep: Math.floor(moment.sweep),
    iron: tool ? `${tool.code} ${tool.name}` : '',
    dot: tool?.dotCorner ?? 'left',
    byHand: moment.handFromStep !== null && moment.step > moment.handFromStep,
  }
  useComparing.setState({ kept })
}

useApp.subscribe(({ job: now }, { job: then }) => {
  if (!now || !then || now.id !== then.id || now.document === then.document) return
  useComparing.setState({ before: { jobId: now.id, job: then.document } })
})
