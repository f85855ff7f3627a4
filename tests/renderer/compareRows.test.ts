import { expect, test } from 'vitest'
import type { Job } from '../../geometry/job.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import { createTexts } from '../../main/texts.ts'
import { jobRows, momentRows, otherDifferences, type Row } from '../../renderer/grind/compare/rows.ts'
import type { MomentFigures } from '../../renderer/grind/compare/together.ts'
import { figuresIn } from '../../renderer/ui/useFigure.ts'
import type { RunShape } from '../../renderer/worker/protocol.ts'
import { jobOf } from './loopBench.ts'

const words = { t: createTexts().t, figures: figuresIn('mm') }

const grindOf = (job: Job) => {
  const setUp = setUpOf(job)
  if (!setUp.ok) throw new Error(setUp.problems[0]?.code)
  return { job, setUp: setUp.value, shape: { sweeps: job.motion.sweeps } as RunShape }
}

const rowsOf = (own: Job, other: Job): readonly Row[] => jobRows(grindOf(own), grindOf(other), words)
const differing = (rows: readonly Row[]) => rows.filter(({ own, other }) => own !== other)

test('equal jobs: what is set at the bench, each figure the same, and nothing further', () => {
  const rows = rowsOf(jobOf(), jobOf())
  expect(rows.map(({ key }) => key)).toEqual(['stopLeft', 'stopRight', 'reach', 'load', 'sweeps'])
  expect(differing(rows)).toEqual([])
  expect(otherDifferences(jobOf(), jobOf())).toEqual([])
})

test('a stop is told in free play and turns', () => {
  const [left] = differing(rowsOf(jobOf(), jobOf({ stopTurnsLeft: 1 })))
  // 0.8 mm a turn.
  expect(left).toMatchObject({ key: 'stopLeft', own: '1.60\u00a0mm, 2\u00a0turns', other: '0.80\u00a0mm, 1\u00a0turn' })
})

test('any other figure that differs is named by the quantity table, with its unit', () => {
  const other = { ...jobOf(), station: { ...jobOf().station, wheelDiameterMm: 200 } }
  expect(differing(rowsOf(jobOf(), other))).toEqual([
    {
      key: 'station.wheelDiameterMm',
      name: expect.stringMatching(/wheel/),
      own: '250.0\u00a0mm',
      other: '200.0\u00a0mm',
    },
  ])
})

test('every difference that is no figure has words', () => {
  const own = jobOf()
  const other: Job = {
    ...own,
    blade: { ...own.blade, bevelSide: 'down', startEdge: [0, 0.1] },
    motion: { ...own.motion, startSide: 'left', path: 'triangle' },
    aim: { ...own.aim, task: 'freshen' },
  }
  const found = otherDifferences(own, other)
  expect(found).toEqual(['bevelSide', 'startEdge', 'task', 'path', 'startSide'])
  for (const key of found) expect(words.t(`compare:field.${key}`)).not.toBe(`field.${key}`)
})

test('a moment in figures, minutes at the time of an unhurried sweep', () => {
  const standing = (sweep: number): MomentFigures => ({
    step: sweep * 8,
    sweep,
    reliefLeftMm: 0.123,
    reliefRightMm: 0.2,
    inkLeftShare: 0.314,
    volumeRemovedMm3: 12.34,
  })
  const rows = momentRows(standing(120), standing(60), words)
  expect(Object.fromEntries(rows.map(({ key, own, other }) => [key, [own, other]]))).toEqual({
    sweep: ['120', '60'],
    reliefLeft: ['0.12\u00a0mm', '0.12\u00a0mm'],
    reliefRight: ['0.20\u00a0mm', '0.20\u00a0mm'],
    inkLeft: ['31\u00a0%', '31\u00a0%'],
    steel: ['12.3\u00a0mm³', '12.3\u00a0mm³'],
    // 120 sweeps of a second are 2 min.
    minutes: ['2.0\u00a0min', '1.0\u00a0min'],
  })
})
