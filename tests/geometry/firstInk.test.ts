import { describe, expect, it } from 'vitest'
import { firstInkOf } from '../../geometry/firstInk.ts'
import { hollowOf } from '../../geometry/hollow.ts'
import { parseJob } from '../../geometry/parseJob.ts'
import { solveJob } from '../../geometry/solveJob.ts'
import { begin, exampleInput, exampleJob, found } from './example.ts'

const inkAt = (currentBevelDeg: number | null, turns = 1) =>
  found(
    firstInkOf(
      found(
        parseJob(
          exampleInput({
            blade: { currentBevelDeg },
            motion: { stopTurnsLeft: turns, stopTurnsRight: turns },
          }),
        ),
      ),
    ),
  )

describe('the ink of the first sweeps', () => {
  // The wheel is set to 25 degrees at the tip; a flat bevel at its chord angle, 26.6, is touched in its middle.
  const chordDeg = hollowOf(125, (25 * Math.PI) / 180, 3.2).chordAngleDeg

  it('a flat bevel at the chord angle of the hollow to come loses its ink in the middle', () => {
    const { verdict, columns } = inkAt(chordDeg)
    expect(verdict).toBe('match')
    const middle = columns[14]
    expect(((middle?.from ?? 0) + (middle?.to ?? 0)) / 2).toBeCloseTo(0.5, 1)
  })

  it('a blunter bevel than the set-up is touched at the heel, a keener one at the edge', () => {
    expect(inkAt(chordDeg + 2).verdict).toBe('heelHigh')
    expect(inkAt(chordDeg - 2).verdict).toBe('edgeHigh')
  })

  it('where no bevel is measured, grind, ink and cautions all begin from the chord that the set-up leaves', () => {
    expect(inkAt(null).verdict).toBe('match')
    const codes = (currentBevelDeg: number | null) =>
      found(solveJob(exampleJob({ blade: { currentBevelDeg } }))).cautions.map(({ code }) => code)
    expect(codes(null)).not.toContain('edgeFirst')
    expect(codes(null)).not.toContain('heelFirst')
    expect(codes(chordDeg - 1)).toContain('edgeFirst')
    expect(codes(chordDeg + 1)).toContain('heelFirst')
    expect([...begin(exampleJob({ blade: { currentBevelDeg: null } })).state.vMm]).toEqual([
      ...begin(exampleJob({ blade: { currentBevelDeg: chordDeg } })).state.vMm,
    ])
  })

  it('with the stops closed the whole width is touched alike; a job without a triangle says why', () => {
    const { columns } = inkAt(chordDeg, 0)
    expect(columns.slice(4, -4).every(({ from }) => from !== null)).toBe(true)
    const job = exampleJob()
    const none = firstInkOf({ ...job, aim: { ...job.aim, bevelAngleDeg: null, barDistanceMm: 500 } })
    expect(none.ok ? null : none.problems[0]?.code).toBe('noTriangle')
  })
})
