import { expect, it } from 'vitest'
import type { GrindState } from '../../geometry/grind.ts'
import { exampleJob, ground } from './example.ts'

/** Each grid has the nodes of the one before and one more between any two. */
const grids = [
  { across: 57, through: 9 },
  { across: 113, through: 17 },
  { across: 225, through: 33 },
]

/** Greatest difference of the edge and mean difference of the field, at the nodes that both grids have. */
const apart = (coarse: GrindState, fine: GrindState) => {
  let edgeMm = 0
  let sumMm = 0
  for (let i = 0; i < coarse.acrossCount; i++)
    for (let j = 0; j < coarse.throughCount; j++) {
      const here = coarse.vMm[i * coarse.throughCount + j] as number
      const difference = Math.abs(here - (fine.vMm[2 * i * fine.throughCount + 2 * j] as number))
      if (j === 0) edgeMm = Math.max(edgeMm, difference)
      sumMm += difference
    }
  return { edgeMm, fieldMm: sumMm / coarse.vMm.length }
}

it.each([
  { name: 'steered', changes: {} },
  {
    name: 'rocking',
    changes: { fixture: { kind: 'rocking' as const }, motion: { rollLeftDeg: 0.5, rollRightDeg: 0.5 } },
  },
])(
  '$name, refining the grid: edge and field converge at second order (three grids, 57 x 9 to 225 x 33)',
  ({ changes }) => {
    const [a, b, c] = grids.map((grid) => ground(exampleJob({ ...changes, grid }))) as [
      GrindState,
      GrindState,
      GrindState,
    ]
    const first = apart(a, b)
    const second = apart(b, c)
    // Halving the spacing divides a second-order error by 4; seen 2.02 to 2.08.
    expect(Math.abs(Math.log2(first.edgeMm / second.edgeMm) - 2)).toBeLessThan(0.15)
    expect(Math.abs(Math.log2(first.fieldMm / second.fieldMm) - 2)).toBeLessThan(0.15)
    // What is then left on 113 x 17 is a third of the last difference.
    expect(second.edgeMm / 3).toBeLessThan(1e-4)
  },
)
