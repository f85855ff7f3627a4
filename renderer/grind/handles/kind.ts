import type { TFunction } from 'i18next'
import { freedomOf } from '../../../geometry/freedom.ts'
import type { Job } from '../../../geometry/job.ts'
import type { QuantityPath } from '../../../geometry/quantities.ts'
import { type SetUp, setUpOf } from '../../../geometry/setUp.ts'
import type { Station } from '../../../main/contract/entities.ts'
import type { AnchorName } from '../../scene/anchors.ts'
import type { Project } from '../../scene/SceneView.tsx'
import type { Figures } from '../../ui/useFigure.ts'
import { furthest, type Range } from './range.ts'

export type HandleId = 'stopLeft' | 'stopRight' | 'bar' | 'barOffset' | 'projection' | 'reach'

/** What a handle is made from: the job as it is being ground. */
export interface HandleFacts {
  readonly t: TFunction
  readonly figures: Figures
  readonly job: Job
  readonly setUp: SetUp
  readonly station: Station | null
}

/** A value in words. */
export interface Told {
  /** With its unit. */
  readonly value: string
  /** What follows from it. */
  readonly follows?: string
}

/** The value after the pointer has gone so far (px) from where it took hold. */
export type Grip = (dxPx: number, dyPx: number) => number

/** A part of the machine that can be taken hold of, and what becomes of the job when it is moved. Values are in the quantity's unit. */
export interface HandleKind {
  readonly id: HandleId
  /** Where its ring is; of two points, between them. */
  readonly anchors: readonly [AnchorName] | readonly [AnchorName, AnchorName]
  readonly name: string
  readonly hint: string
  readonly cursor: string
  /** The field that says the same, and where a refusal is told. */
  readonly path: QuantityPath
  readonly value: number
  readonly range: Range
  /** Limits for typing, where they are not the table's. */
  readonly typed?: { readonly min: number; readonly max: number }
  /** What has to be said while it is moved. */
  readonly caution: 'stops' | 'setUp' | null
  /** Takes hold. @param loadPlaceMm where the load stands now, + right */
  grip(project: Project, loadPlaceMm: number): Grip
  /** Whether the hand feels a notch there. */
  notch?(value: number): boolean
  change(job: Job, value: number): Job
  /** @param job with the value in it */
  tell(value: number, job: Job): Told
}

/** Whether a job stands: its triangle closes and its stops leave it a freedom. */
export const stands = (job: Job): boolean => {
  const setUp = setUpOf(job)
  return setUp.ok && freedomOf(job, setUp.value).ok
}

/** The table's range, as far as the geometry goes along with it. */
export const rangeWithin = (
  { min, max }: { readonly min: number; readonly max: number },
  snap: number,
  value: number,
  withValue: (value: number) => Job,
): Range => {
  const canBe = (each: number) => stands(withValue(each))
  return { min: furthest(canBe, value, min, snap), max: furthest(canBe, value, max, snap), snap }
}
