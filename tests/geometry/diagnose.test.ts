import { describe, expect, it } from 'vitest'
import { engineCauses, type Signature, signaturesOf, suspectsOf, withFault } from '../../geometry/diagnose.ts'
import { type Changes, exampleJob } from './example.ts'

const jobs: readonly (readonly [string, Changes])[] = [
  ['two turns', {}],
  ['one turn', { motion: { stopTurnsLeft: 1, stopTurnsRight: 1 } }],
  ['a square fixture', { fixture: { kind: 'square' }, motion: { stopTurnsLeft: 0, stopTurnsRight: 0 } }],
]

describe.each(jobs)('faults of %s', (_, changes) => {
  const signatures = signaturesOf(exampleJob(changes))
  const engine = signatures.filter(({ byEngine }) => byEngine)

  it('each that shows anything comes first, or level with what shows the same, when just that is seen', () => {
    expect(engine.length).toBeGreaterThan(7)
    for (const { cause, symptoms } of engine) {
      const suspects = suspectsOf(signatures, symptoms)
      expect([cause, suspects.find((each) => each.cause === cause)?.rank]).toEqual([cause, 1])
    }
  })

  it('left and right faults show left and right', () => {
    const of = (cause: string) => engine.find((each) => each.cause === cause)?.symptoms ?? []
    expect(of('barRollLeft')).toContain('cornerLeft')
    expect(of('barRollRight')).toContain('cornerRight')
    const swapped = of('coneLeft').map((symptom) => symptom.replace('Left', 'Right'))
    expect(of('coneRight')).toEqual(swapped)
  })

  it('a set-up too keen takes the ink at the heel, one too blunt at the edge', () => {
    expect(suspectsOf(signatures, ['inkHeel'])[0]?.cause).toBe('setUpKeen')
    expect(suspectsOf(signatures, ['inkEdge'])[0]?.cause).toBe('setUpBlunt')
  })
})

describe('what the job decides', () => {
  it('free play takes up an iron askew in its clamp; without any it shows', () => {
    const free = signaturesOf(exampleJob()).find(({ cause }) => cause === 'mountingRight')
    const held = signaturesOf(exampleJob({ fixture: { kind: 'square' } })).find(
      ({ cause }) => cause === 'mountingRight',
    )
    expect(free).toBeUndefined()
    expect(held?.symptoms).toContain('cornerRight')
  })

  it('a square fixture has no stops to blame, and every fault changes the job', () => {
    const square = signaturesOf(exampleJob({ fixture: { kind: 'square' } }))
    expect(square.map(({ cause }) => cause)).not.toContain('stopLeftOpen')
    const job = exampleJob()
    for (const cause of engineCauses) expect(withFault(job, cause)).not.toEqual(job)
  })
})

describe('ranking', () => {
  const signature = (cause: 'lash' | 'crown' | 'capIron', symptoms: Signature['symptoms']): Signature => ({
    cause,
    symptoms,
    byEngine: true,
  })

  it('is by what is shared of all that is seen or would be: 1 of 2, 1 of 2, none', () => {
    const suspects = suspectsOf(
      [
        signature('lash', ['curveMore', 'inkLeft']),
        signature('crown', ['curveMore', 'inkRight']),
        signature('capIron', ['chatter']),
      ],
      ['curveMore'],
    )
    expect(suspects.map(({ cause, fit, rank }) => [cause, fit, rank])).toEqual([
      ['lash', 0.5, 1],
      ['crown', 0.5, 1],
    ])
  })
})
