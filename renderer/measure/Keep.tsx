import type { MeasuredEdge } from '../../geometry/measure.ts'
import type { BenchLogDraft, Tool } from '../../main/contract/entities.ts'
import { useApp } from '../app/store.ts'
import { problemSentence, useTexts } from '../ui/texts.tsx'
import { useSheet } from './bench.ts'
import { keepReading } from './keepReading.ts'
import { askewOf } from './reading.ts'

interface KeepProps {
  readonly tool: Tool
  readonly stage: BenchLogDraft['stage']
  /** Null: the leaves do not show one yet. */
  readonly edge: MeasuredEdge | null
}

/** Fields of leaves and shavings say what is wrong themselves. */
const FIELD_PATHS: readonly string[] = [
  'cornerLeftMm',
  'cornerRightMm',
  'halfwayLeftMm',
  'leftMm',
  'middleMm',
  'rightMm',
  'outMm',
]
const shownAtField = (path: string): boolean => FIELD_PATHS.includes(path)

/** Goes to the first field with something wrong. @returns whether there is one */
const focusWrong = (): boolean => {
  const wrong = document.querySelector<HTMLElement>('.entries [aria-invalid="true"]')
  wrong?.focus()
  return wrong !== null
}

/** The one key that keeps a reading; unequal leaves are kept only when asked for by that name. */
export const Keep = ({ tool, stage, edge }: KeepProps) => {
  const t = useTexts()
  const { problem } = useSheet(tool.id)
  const hasJob = useApp((app) => app.job !== null)
  const askew = edge !== null && askewOf(edge) !== null
  const keep = async () => {
    if (!focusWrong() && !(await keepReading(tool, stage))) focusWrong()
  }
  return (
    <div className="entries-keep">
      <button type="button" className={askew ? 'key' : 'key key-main'} onClick={() => void keep()}>
        {t(askew ? `measure:keep.askew.${stage}` : `measure:keep.${stage}`)}
      </button>
      <p className="muted">{t(`measure:keep.what.${askew ? 'askew' : hasJob ? 'withJob' : 'alone'}`)}</p>
      {problem && !shownAtField(problem.path) && (
        <p className="caution" role="alert">
          {problemSentence(t, problem)}
        </p>
      )}
    </div>
  )
}
