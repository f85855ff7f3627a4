import { describe, expect, it } from 'vitest'
import { groundOf, keptAt, type SquareLine } from '../../renderer/square/ground.ts'
import { type SquareSetting, withEarlier } from '../../renderer/square/setting.ts'
import { exampleJob } from '../geometry/example.ts'

const HERE = { stationId: 'wheel', fixtureId: 'fixture' }
const line = (id: string, changes: Partial<SquareLine> = {}): SquareLine => ({
  ...HERE,
  id,
  stage: 'asGround',
  counts: 'yes',
  squareGapMm: 0.2,
  squareOverMm: 50,
  freePlayLeftMm: 1.6,
  freePlayRightMm: 1.6,
  ...changes,
})
const ids = (lines: readonly SquareLine[], taken: readonly (string | null)[] = []) =>
  keptAt(lines, HERE, exampleJob(), 30, taken).map(({ logId }) => logId)

describe('how an edge was ground, as far as that turns it', () => {
  it('stops set unlike are 0.4 mm of play apart: half a turn of 0.8', () => {
    const job = exampleJob({ motion: { stopTurnsLeft: 1, stopTurnsRight: 1.5 } })
    expect(groundOf(job, 25)).toEqual({
      bevelDeg: 25,
      wheelWidthMm: 50,
      guideArmMm: 75,
      unequalPlayMm: expect.closeTo(0.4, 12),
    })
  })

  it('closed stops turn nothing, and a fixture without stops has none', () => {
    const closed = exampleJob({ motion: { stopTurnsLeft: 0, stopTurnsRight: 0 } })
    expect(groundOf(closed, 25).guideArmMm).toBeNull()
    expect(groundOf(exampleJob({ fixture: { kind: 'square' } }), 25)).toMatchObject({
      guideArmMm: null,
      unequalPlayMm: null,
    })
  })
})

describe('earlier readings of the bench log', () => {
  it('are those by a square, as ground at this wheel in this fixture, oldest first', () => {
    const others = [
      line('elsewhere', { stationId: 'other' }),
      line('otherwise', { fixtureId: 'other' }),
      line('honed', { stage: 'asHoned' }),
      line('leftOut', { counts: 'no' }),
      line('leaves', { squareGapMm: null }),
    ]
    expect(ids([line('new'), ...others, line('old')])).toEqual(['old', 'new'])
    expect(ids([line('new'), line('old')], [null, 'old'])).toEqual(['new'])
  })

  it('are the newest ten', () => {
    const lines = Array.from({ length: 12 }, (_, i) => line(`${i}`))
    expect(ids(lines)).toEqual(['9', '8', '7', '6', '5', '4', '3', '2', '1', '0'])
  })

  it('bring the free play of their own grind, and the bevel of the tool', () => {
    const lines = [line('unlike', { freePlayRightMm: 2 }), line('closed', { freePlayLeftMm: 0, freePlayRightMm: 0 })]
    const [closed, unlike] = keptAt(lines, HERE, exampleJob(), 30, [])
    expect(unlike).toMatchObject({ bevelDeg: 30, guideArmMm: 75, unequalPlayMm: expect.closeTo(0.4, 12) })
    expect(closed).toMatchObject({ guideArmMm: null, unequalPlayMm: 0 })
  })

  it('come before those in hand, each a clamping of its own, and those in hand count on', () => {
    const ground = { bevelDeg: 25, wheelWidthMm: 50, guideArmMm: 75, unequalPlayMm: 0 }
    const inHand = { gapMm: 0, otherGapMm: null, overMm: 50, skewDeg: 0, errorDeg: 0.02, dressed: false, logId: null }
    const now: SquareSetting = {
      gapMm: null,
      otherGapMm: null,
      overMm: 50,
      clamping: 5,
      dressed: false,
      wantedDeg: 0,
      readings: [
        { ...ground, ...inHand, id: 1, clamping: 2 },
        { ...ground, ...inHand, id: 2, clamping: 2 },
      ],
    }
    const earlier = ['a', 'b'].map((logId) => ({ ...ground, logId, gapMm: 0.2, overMm: 50 }))
    const after = withEarlier(now, earlier)
    expect(after.readings.map(({ logId, clamping }) => [logId, clamping])).toEqual([
      ['a', 1],
      ['b', 2],
      [null, 3],
      [null, 3],
    ])
    expect(after.clamping).toBe(4)
    expect(after.readings[0]?.skewDeg).toBeCloseTo(0.22918, 5)
  })
})
