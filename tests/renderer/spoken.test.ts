import { expect, test } from 'vitest'
import { inkLeftByThird, inkLeftShare } from '../../geometry/ink.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import { createTexts } from '../../main/texts.ts'
import { type SpokenFacts, spokenLines } from '../../renderer/grind/spoken.ts'
import { figuresIn } from '../../renderer/ui/useFigure.ts'
import { exampleJob, found } from '../geometry/example.ts'
import { moment as momentOf } from './moments.ts'

const { t } = createTexts()
const job = exampleJob()
const facts = (parts: Partial<SpokenFacts> = {}, moment: Partial<SpokenFacts['moment']> = {}): SpokenFacts => ({
  running: { job, setUp: found(setUpOf(job)) },
  moment: momentOf(moment),
  stops: { leftMm: 1.6, rightMm: 1.2, leftTurns: 2, rightTurns: 1.5 },
  touchingUMm: [-28.5, -14.5],
  inkByThird: [0.04, 0.3, 1],
  wantedMm: 0.5,
  lifted: false,
  rotation: 'intoEdge',
  dot: 'left',
  ...parts,
})
const said = (lengthUnit: 'mm' | 'inch', of: SpokenFacts): string =>
  spokenLines(t, figuresIn(lengthUnit), of)
    .map(({ text }) => text)
    .join('\n')
    .replaceAll('\u00a0', ' ')

test('everything the picture shows is told in words, with units', () => {
  expect(said('mm', facts()).split('\n')).toEqual([
    'Wheel: 250.0 mm across, 90 rpm, its rim running into the edge.',
    expect.stringMatching(/^Bar: 12\.0 mm thick, \d+\.\d mm from the wheel\.$/),
    'Blade: 57.0 mm wide, 3.2 mm thick, the dot on its left corner; bevel set at the edge 25.0°.',
    "Projection: 130.0 mm from the bar's axis to the edge.",
    'Stops: left 1.60 mm of free play, 2 turns; right 1.20 mm, 1.5 turns.',
    // 0.02 rad = 1.1459 degrees, 0.5 rad = 28.648 degrees.
    'Pose: yawed 1.15° to the left, tilted 28.6° about the bar.',
    'The fixture bears on its left stop.',
    'Load: 20 N, 24 mm left of the middle.',
    'Touching: 14 mm of the edge, from 29 mm left of the middle to 15 mm left of the middle, 2.4 N/mm at most.',
    'Relief: left 0.19 mm, right 0.19 mm, wanted 0.50 mm.',
    'Ink left: 4 % of the left third of the bevel, 30 % of the middle, 100 % of the right.',
  ])
})

test('lengths are told in the unit that the workshop reads them in', () => {
  // 130 / 25.4 = 5.1181.
  expect(said('inch', facts())).toMatch(/Projection: 5\.118 in from/)
  expect(said('inch', facts())).not.toMatch(/[^/]mm/)
})

test('lifted, nothing is said to bear or touch; before the first step nothing touches', () => {
  const lifted = said('mm', facts({ lifted: true }))
  expect(lifted).toContain('The blade is lifted')
  expect(lifted).not.toMatch(/bears|Load|Touching|Pose/)
  expect(said('mm', facts({}, { step: 0 }))).toContain('Touching: nothing yet.')
})

test('every sentence it can say is in the catalogue', () => {
  for (const bearing of ['none', 'left', 'right', 'pin'] as const)
    for (const side of [-1, 0, 1])
      for (const rotation of ['intoEdge', 'awayFromEdge'] as const) {
        const text = said(
          'mm',
          facts(
            { rotation, dot: 'right', wantedMm: side === 0 ? null : 0.5, touchingUMm: [side * 9, 20] },
            { bearing, yawRad: side * 0.03, loadPlaceMm: side * 20 },
          ),
        )
        expect(text).not.toMatch(/spoken:|\{\{|^(wheel|bears|pose|load|place|touch)\./m)
      }
})

test('ink is told by thirds of the bevel, which together make its whole', () => {
  // Ten columns of two rows; ink is gone from the first three columns, and from one row of the sixth.
  const vMm = new Float64Array(20)
  for (const at of [0, 1, 2, 3, 4, 5, 11]) vMm[at] = 1
  const field = { acrossCount: 10, throughCount: 2, vMm, vStartMm: new Float64Array(20) }
  // Thirds are columns 0 to 3, 3 to 6 and 6 to 9; the outermost columns count half. Left: 1 of 0.5 + 1 + 1 + 1.
  const [left, middle, right] = inkLeftByThird(field)
  expect(left).toBeCloseTo(1 / 3.5, 12)
  expect(middle).toBeCloseTo(3.5 / 4, 12)
  expect(right).toBe(1)
  // Lost: 0.5 + 1 + 1 whole columns and half a one of nine.
  expect(inkLeftShare(field)).toBeCloseTo(1 - 3 / 9, 12)
})
