import { expect, test } from 'vitest'
import { type Job, jobSchema } from '../../geometry/job.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import { solveJob } from '../../geometry/solveJob.ts'
import { createTexts } from '../../main/texts.ts'
import { formulaLines, formulaNames } from '../../renderer/grind/formulas/formulas.ts'
import { figuresIn } from '../../renderer/ui/useFigure.ts'
import { jobOf } from './loopBench.ts'

const linesOf = (job: Job, known = false) => {
  const setUp = setUpOf(job)
  const report = solveJob(job)
  if (!setUp.ok || !report.ok) throw new Error('the job of this test can be ground')
  return formulaLines({ job, setUp: setUp.value, grind: known ? report.value.grind : null, figures: figuresIn('mm') })
}
const number = (text: string | undefined): number => Number.parseFloat(String(text))

test('the figures put in give what the line comes to', () => {
  const lines = Object.fromEntries(linesOf(jobOf(), true).map((line) => [line.name, line]))
  const { projection, radius, offset, bevel } = lines.bar?.params ?? {}
  const b = (number(bevel) * Math.PI) / 180
  const along = number(projection) + number(radius) * Math.sin(b)
  const across = number(offset) - number(radius) * Math.cos(b)
  expect(number(lines.bar?.comesTo)).toBeCloseTo(Math.hypot(along, across), 0)
  expect(number(lines.yaw?.comesTo)).toBeCloseTo((Math.atan(1.6 / 75) * 180) / Math.PI, 2)
  expect(number(lines.roof?.comesTo)).toBeCloseTo((1.6 / 75) * 28.5, 2)
  expect(number(lines.rim?.comesTo)).toBeCloseTo((Math.PI * 0.25 * 90) / 60, 1)
  // The law's limit for a sinusoid: pi w / 8.
  expect(number(lines.reach?.comesTo)).toBeCloseTo((Math.PI * 57) / 8, 0)
  const { share, formed } = lines.roof?.params ?? {}
  expect(number(share)).toBeCloseTo(number(formed) / number(lines.roof?.comesTo), 1)
})

test('a fixture without stops has no yaw to reckon, and every line has its words', () => {
  const job = jobOf()
  const square = jobSchema.parse({ ...job, fixture: { ...job.fixture, kind: 'square' } })
  expect(linesOf(square).map(({ name }) => name)).toEqual(['bar', 'tip', 'reach', 'rim'])
  const { t } = createTexts()
  for (const name of formulaNames)
    for (const part of ['what', 'formula', 'figures']) expect(t(`formulas:${name}.${part}`)).not.toContain(`${name}.`)
})
