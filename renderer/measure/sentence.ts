import type { TFunction } from 'i18next'
import { predictedReliefMm } from '../../geometry/expectedLeaves.ts'
import type { Report } from '../../geometry/report.ts'
import type { BenchLogDraft, Tool } from '../../main/contract/entities.ts'
import { shortDate } from '../ui/dates.ts'
import { problemSentence } from '../ui/texts.tsx'
import { type Against, against, askewOf } from './reading.ts'
import type { Showing, Shown } from './shown.ts'
import { wantedOf } from './wanted.ts'

/** What a sentence needs besides the edge: the texts, how lengths are written, and what the edge is held against. */
export interface Telling {
  readonly t: TFunction
  readonly length: (mm: number) => string
  readonly wantedMm: number
  /** Null: nothing predicted. */
  readonly predictedMm: number | null
}

/** @returns what an edge is held against: wanted and predicted, by the fixture's history where it has one, else by the mean of both corners */
export const heldAgainst = (tool: Tool, report: Report | null): Pick<Telling, 'wantedMm' | 'predictedMm'> => ({
  wantedMm: wantedOf(tool, report).reliefMm,
  predictedMm: report && predictedReliefMm(report),
})

const edgeSentence = ({ edge }: Shown, { t, length }: Telling): string => {
  const askew = askewOf(edge)
  if (askew) return t('measure:shown.askew', { least: length(askew[0]), most: length(askew[1]) })
  if (edge.shape === 'straight') return t('measure:shown.straight')
  return t('measure:shown.alike', { relief: length(edge.reliefMm) })
}

/** An edge as found is held against what is wanted alone: it was not ground by this job. */
const againstSentences = (
  { edge, span }: Shown,
  stage: BenchLogDraft['stage'],
  { t, length, wantedMm, predictedMm }: Telling,
): readonly string[] => {
  // Leaves that lay askew leave so wide a span that lying within it says nothing.
  const says = (verdict: Against['verdict']) => verdict !== 'as' || askewOf(edge) === null
  const told = (to: 'wanted' | 'predicted', otherMm: number) => {
    const { verdict, byMm } = against(span, otherMm)
    return says(verdict) ? t(`measure:shown.${to}.${verdict}`, { by: length(byMm) }) : ''
  }
  const wanted = told('wanted', wantedMm)
  return predictedMm === null || stage === 'asFound' ? [wanted] : [wanted, told('predicted', predictedMm)]
}

const shownSentence = (shown: Shown, stage: BenchLogDraft['stage'], telling: Telling): string => {
  const { line } = shown
  const last = line && telling.t(`measure:shown.last.${line.stage}`, { date: shortDate(line.at) })
  // A line of the log was not ground by the job as it stands now, so its prediction is none.
  const compared = againstSentences(shown, line ? 'asFound' : stage, telling)
  return [last, edgeSentence(shown, telling), ...compared].filter(Boolean).join(' ')
}

/** @returns the sentence that says what the picture says */
export const sentenceOf = (
  showing: Showing,
  method: BenchLogDraft['method'],
  stage: BenchLogDraft['stage'],
  telling: Telling,
): string => {
  if (showing.shown) return shownSentence(showing.shown, stage, telling)
  if (showing.problems.length > 0) {
    // Leaves and shavings say it at their fields; points are wrong together, and it is said here.
    if (method === 'leaves' || method === 'shavings') return telling.t('measure:shown.refused')
    return showing.problems.map((problem) => problemSentence(telling.t, problem)).join(' ')
  }
  return telling.t(`measure:shown.${showing.begun ? 'other' : 'begin'}.${method}`)
}
