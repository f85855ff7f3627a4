import type { TFunction } from 'i18next'
import { planOf } from '../../geometry/aim.ts'
import type { Job } from '../../geometry/job.ts'
import { sweepsOf } from '../../geometry/motion.ts'
import { parseJob } from '../../geometry/parseJob.ts'
import { type Profile, profileOf } from '../../geometry/profile.ts'
import { quantities } from '../../geometry/quantities.ts'
import type { PlanReport } from '../../geometry/report.ts'
import { ok, type Result } from '../../geometry/result.ts'
import { solveJob } from '../../geometry/solveJob.ts'
import { PROGRAM } from '../cards/card.ts'
import { dayOf } from '../cards/facts.ts'
import { type CardInput, type MadeFile, plainName } from '../cards/makeCard.ts'
import { loadTypefaces } from '../cards/typefaces.ts'
import { writePdf } from '../cards/writePdf.ts'
import type { CallInput } from '../contract/calls.ts'
import type { Settings } from '../contract/entities.ts'
import { figure, joined } from '../contract/figures.ts'
import { createTexts } from '../texts.ts'
import { wantedProfile } from './curves.ts'
import { writeDxf } from './dxf.ts'
import { type Layer, layOutTemplate, type TemplateFacts } from './layOut.ts'
import { writeSvg } from './svg.ts'

/** How the file is written, and whether the predicted edge is drawn too. */
export type TemplateChoice = Pick<CallInput<'template.make'>, 'form' | 'predicted'>

const wordsOf = (
  t: TFunction,
  job: Job,
  { reliefMm, edgeRadiusMm }: PlanReport,
  lengthUnit: Settings['lengthUnit'],
): string => {
  const say = (mm: number, decimals: number) => joined(figure(mm, 'mm', decimals, lengthUnit))
  const { widthMm } = job.blade
  const width = say(widthMm, quantities.blade.widthMm.decimals)
  const relief = say(reliefMm, quantities.aim.reliefMm.decimals)
  if (edgeRadiusMm === null) return t('template.straight', { width })
  return t('template.figures', { width, relief, radius: say(edgeRadiusMm, quantities.aim.edgeRadiusMm.decimals) })
}

const predictedOf = (job: Job): Result<Profile> => {
  const report = solveJob(job)
  return report.ok ? ok(profileOf(report.value.grind.edgeUMm, report.value.grind.edgeVMm)) : report
}

const inUtf8 = (text: string): Uint8Array => new TextEncoder().encode(text)

const write = async (
  layers: readonly Layer[],
  { form }: TemplateChoice,
  { t }: TemplateFacts,
  at: Date,
  title: string,
): Promise<Uint8Array> => {
  if (form === 'svg') return inUtf8(writeSvg(layers, title))
  if (form === 'dxf') return inUtf8(writeDxf(layers, title, t('template.units')))
  const items = layers.flatMap((layer) => layer.items)
  return writePdf(items, loadTypefaces(), { title, program: PROGRAM, at })
}

/** @returns the template of a job's wanted edge, or the problems that the job has */
export const makeTemplate = async (
  { tool, job }: CardInput,
  choice: TemplateChoice,
  at: Date,
  lengthUnit: Settings['lengthUnit'] = 'mm',
): Promise<Result<MadeFile>> => {
  const parsed = parseJob(job.document)
  if (!parsed.ok) return parsed
  const plan = planOf(parsed.value)
  if (!plan.ok) return plan
  const predicted = choice.predicted ? predictedOf(parsed.value) : ok(null)
  if (!predicted.ok) return predicted
  const texts = createTexts()
  const t = texts.getFixedT(null, 'out')
  const { blade } = parsed.value
  const facts: TemplateFacts = {
    code: tool.code,
    name: tool.name,
    dotCorner: tool.dotCorner,
    wanted: wantedProfile(plan.value, blade.widthMm),
    predicted: predicted.value,
    figures: wordsOf(t, parsed.value, plan.value, lengthUnit),
    sweeps: sweepsOf(parsed.value),
    day: dayOf(texts.getFixedT(null, 'card'), at),
    t,
  }
  const title = t('template.title', { tool: `${tool.code} ${tool.name}`.trim() })
  const bytes = await write(layOutTemplate(facts, loadTypefaces()), choice, facts, at, title)
  return ok({ bytes, fileName: `${t('template.fileName', { code: plainName(tool.code) })}.${choice.form}` })
}
