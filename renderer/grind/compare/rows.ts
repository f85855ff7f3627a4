import type { TFunction } from 'i18next'
import type { Job } from '../../../geometry/job.ts'
import { type QuantityPath, quantities } from '../../../geometry/quantities.ts'
import { GUESSED_SWEEP_SECONDS } from '../../../geometry/removal.ts'
import { joined } from '../../../main/contract/figures.ts'
import type { Figures } from '../../ui/useFigure.ts'
import { stopsOf } from '../stops.ts'
import type { Running } from '../useLiveGrind.ts'
import type { MomentFigures } from './together.ts'

/** A line of the table: a figure of the own job and of the other, as written. */
export interface Row {
  readonly key: string
  readonly name: string
  readonly own: string
  readonly other: string
}

type Grind = Pick<Running, 'job' | 'setUp' | 'shape'>

interface Words {
  readonly t: TFunction
  readonly figures: Figures
}

const SECONDS = 60

const stopText = ({ job, setUp }: Grind, side: 'left' | 'right', { t, figures }: Words): string => {
  if (job.fixture.kind !== 'steered' || job.fixture.guideArmMm === null) return t('compare:none')
  const stops = stopsOf(job, setUp)
  const [mm, turns] = side === 'left' ? [stops.leftMm, stops.leftTurns] : [stops.rightMm, stops.rightTurns]
  return `${figures.inWords(mm, 'mm', 2)}, ${figures.inWords(turns, 'turn', 2)}`
}

/** What is set at the bench: always told. */
const settingRows = (own: Grind, other: Grind, words: Words): Row[] => {
  const { t, figures } = words
  const row = (key: string, name: string, text: (grind: Grind) => string): Row => ({
    key,
    name,
    own: text(own),
    other: text(other),
  })
  const of = (path: QuantityPath, value: number) => joined(figures.of(path, value))
  return [
    row('stopLeft', t('compare:row.stopLeft'), (grind) => stopText(grind, 'left', words)),
    row('stopRight', t('compare:row.stopRight'), (grind) => stopText(grind, 'right', words)),
    row('reach', t('grind:motion.reach'), ({ job }) => of('motion.fingerReachMm', job.motion.fingerReachMm)),
    row('load', t('grind:motion.load'), ({ job }) => of('motion.loadN', job.motion.loadN)),
    row('sweeps', t('grind:motion.sweeps'), ({ shape }) => of('motion.sweeps', shape.sweeps)),
  ]
}

const TOLD_ALREADY = new Set([
  'motion.stopTurnsLeft',
  'motion.stopTurnsRight',
  'motion.yawLeftDeg',
  'motion.yawRightDeg',
  'motion.fingerReachMm',
  'motion.loadN',
  'motion.sweeps',
])
const SECTIONS = ['blade', 'station', 'fixture', 'aim', 'motion'] as const

const numberAt = (job: Job, section: (typeof SECTIONS)[number], key: string): number | null => {
  const value = (job[section] as Record<string, unknown>)[key]
  return typeof value === 'number' ? value : null
}

/** Whatever else of the jobs is a figure and differs, by the quantity table. */
const furtherRows = ({ job: own }: Grind, { job: other }: Grind, { t, figures }: Words): Row[] =>
  SECTIONS.flatMap((section) =>
    Object.keys(quantities[section]).flatMap((key) => {
      const path = `${section}.${key}` as QuantityPath
      const [a, b] = [numberAt(own, section, key), numberAt(other, section, key)]
      if (a === b || TOLD_ALREADY.has(path)) return []
      const text = (value: number | null) => (value === null ? t('compare:none') : joined(figures.of(path, value)))
      return [{ key: path, name: t(`quantities:${path}.name`), own: text(a), other: text(b) }]
    }),
  )

/** @returns what both jobs are set to, and every other figure in which they differ */
export const jobRows = (own: Grind, other: Grind, words: Words): readonly Row[] => [
  ...settingRows(own, other, words),
  ...furtherRows(own, other, words),
]

/** @returns what both grinds have come to */
export const momentRows = (own: MomentFigures, other: MomentFigures, { t, figures }: Words): readonly Row[] => {
  const row = (key: string, text: (at: MomentFigures) => string): Row => ({
    key,
    name: t(`compare:row.${key}`, { seconds: GUESSED_SWEEP_SECONDS }),
    own: text(own),
    other: text(other),
  })
  const { inWords } = figures
  return [
    row('sweep', ({ sweep }) => String(Math.floor(sweep))),
    row('reliefLeft', (at) => inWords(at.reliefLeftMm, 'mm', 2)),
    row('reliefRight', (at) => inWords(at.reliefRightMm, 'mm', 2)),
    row('inkLeft', (at) => `${Math.round(100 * at.inkLeftShare)}\u00a0%`),
    row('steel', (at) => inWords(at.volumeRemovedMm3, 'mm3', 1)),
    row('minutes', ({ sweep }) => inWords((sweep * GUESSED_SWEEP_SECONDS) / SECONDS, 'min', 1)),
  ]
}

/** What of a job is no figure: its words stand under `compare:field`. */
const FIELDS: Readonly<Record<string, (job: Job) => unknown>> = {
  bevelSide: ({ blade }) => blade.bevelSide,
  startEdge: ({ blade }) => blade.startEdge,
  fixtureKind: ({ fixture }) => fixture.kind,
  seatsOn: ({ fixture }) => fixture.seatsOn,
  calibration: ({ fixture }) => fixture.calibration,
  task: ({ aim }) => aim.task,
  path: ({ motion }) => [motion.path, motion.recordedPath],
  startSide: ({ motion }) => motion.startSide,
  schedule: ({ motion }) => motion.schedule,
  errors: ({ errors }) => errors,
}

/** @returns keys of what else differs between two jobs, no figures */
export const otherDifferences = (own: Job, other: Job): readonly string[] =>
  Object.entries(FIELDS)
    .filter(([, read]) => JSON.stringify(read(own)) !== JSON.stringify(read(other)))
    .map(([key]) => key)
