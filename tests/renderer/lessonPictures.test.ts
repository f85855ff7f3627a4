import { describe, expect, it } from 'vitest'
import { type Findings, findingsOf, type GroundEdge } from '../../geometry/lesson/findings.ts'
import { type Lesson, type LessonStep, showsModel } from '../../geometry/lesson/lesson.ts'
import { stateOf } from '../../geometry/lesson/state.ts'
import { edgeLayout } from '../../renderer/teach/pictures/edgeLayout.ts'
import { type EdgeLines, linesOf } from '../../renderer/teach/pictures/edgeLines.ts'
import { found } from '../geometry/example.ts'
import { lessons } from '../lessons/support.ts'

const lessonOf = (id: string): Lesson => lessons.find((lesson) => lesson.id === id) as Lesson

const known = new Map<string, Findings>()
/** Each step is ground once, however many tests look at it. */
const findings = (id: string, k: number): Findings => {
  const key = `${id} ${k}`
  const fresh = known.get(key) ?? found(findingsOf(lessonOf(id), k, {}))
  known.set(key, fresh)
  return fresh
}

const figure = (id: string, k: number, ref: string): number => findings(id, k).values[ref]?.value ?? Number.NaN

const drawn = (id: string, k: number, told: boolean): EdgeLines => {
  const lesson = lessonOf(id)
  const { groundMm } = findings(id, k)
  return linesOf(lesson.steps[k] as LessonStep, found(stateOf(lesson, k)), groundMm, told) as EdgeLines
}

const kinds = (lines: EdgeLines): readonly string[] => lines.others.map(({ kind }) => kind)

describe('the edge in its picture', () => {
  it('lies under an even straightedge until the pressed one is told, which leaves the gap that the engine finds', () => {
    expect(kinds(drawn('measuring', 1, false))).toEqual(['straightedge'])
    const { edge, others } = drawn('measuring', 1, true)
    const [pressed] = others
    expect(pressed?.kind).toBe('pressed')
    const [at, behind] = [pressed?.uMm.at(-1) ?? 0, pressed?.behindMm.at(-1) ?? 0]
    const slope = (behind - (pressed?.behindMm[0] ?? 0)) / (2 * at)
    const corner = edge.uMm.at(-1) as number
    const gap = (edge.behindMm.at(-1) as number) - (behind + slope * (corner - at))
    expect(gap).toBeCloseTo(figure('measuring', 1, 'gapPressedMm'), 9)
  })

  it('is told pressed at once where the step itself says so', () => {
    expect(kinds(drawn('measuring', 2, false))).toEqual(['pressed'])
  })

  it('keeps honing and cap iron back until they are told', () => {
    expect(kinds(drawn('honing', 1, false))).toEqual(['straightedge'])
    expect(kinds(drawn('honing', 1, true))).toEqual(['before'])
    expect(drawn('honing', 1, true).reliefMm).toBeCloseTo(figure('honing', 1, 'honedReliefMm'), 9)
    expect(kinds(drawn('honing', 3, false))).toEqual(['straightedge'])
    const [cap] = drawn('honing', 3, true).others
    expect(cap).toMatchObject({ kind: 'cap', behindMm: [0.05, 0.05] })
  })

  it('that the wheel left has the arc nearest to it beside it, as far before it as behind', () => {
    const { groundMm } = findings('roof-and-arc', 1)
    const { behindMm, arcMm } = groundMm as GroundEdge
    const apart = behindMm.map((v, i) => v - (arcMm[i] as number))
    const off = figure('roof-and-arc', 1, 'offArcMm')
    expect(Math.max(...apart)).toBeCloseTo(off, 9)
    expect(Math.min(...apart)).toBeCloseTo(-off, 9)
    expect(kinds(drawn('roof-and-arc', 1, false))).toEqual(['arc'])
    expect(findings('ink', 0).groundMm).toBeNull()
  })

  const alone = lessons.flatMap((lesson) =>
    lesson.steps.flatMap((step, k) => (step.views.includes('glass') && !showsModel(step) ? [[lesson.id, k]] : [])),
  ) as [string, number][]
  it.each(alone)('of %s, step %i, is all within its drawing', (id, k) => {
    for (const told of [false, true])
      for (const roomPx of [288, 900]) {
        const { edge, others, heightPx, bar } = edgeLayout(drawn(id, k, told), roomPx)
        const places = [edge, ...others.map(({ d }) => d)].flatMap((d) => d.slice(1).split('L'))
        for (const [x, y] of places.map((place) => place.split(' ').map(Number)) as [number, number][]) {
          expect(x).toBeGreaterThanOrEqual(0)
          expect(x).toBeLessThanOrEqual(bar.xPx)
          expect(y).toBeGreaterThanOrEqual(0)
          expect(y).toBeLessThanOrEqual(heightPx)
        }
      }
  })
})
