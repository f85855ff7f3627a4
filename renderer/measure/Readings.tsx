import type { BenchLog, Tool } from '../../main/contract/entities.ts'
import { sayProblem } from '../app/store.ts'
import { removeReading } from '../rack/edits.ts'
import { shortDate } from '../ui/dates.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { leavesOfLine } from './reading.ts'
import './readings.css'
import { useLeafWords, useLineWords } from './words.ts'

interface ReadingsProps {
  readonly tool: Tool
  /** Newest first; null until they are there. */
  readonly readings: readonly BenchLog[] | null
  /** Lines can be taken out, each with its undo. */
  readonly editable?: boolean
}

/** What was measured on this tool, newest first: the leaves, and what they showed. */
export const Readings = ({ tool, readings, editable = false }: ReadingsProps) => {
  const t = useTexts()
  if (readings === null) return null
  if (readings.length === 0) return <p className="muted">{t('measure:log.empty')}</p>
  return (
    <ul className="readings">
      {readings.map((line) => (
        <ReadingLine key={line.id} line={line} tool={tool} editable={editable} />
      ))}
    </ul>
  )
}

interface ReadingLineProps {
  readonly line: BenchLog
  readonly tool: Tool
  readonly editable: boolean
}

const ReadingLine = ({ line, tool, editable }: ReadingLineProps) => {
  const t = useTexts()
  const unit = useFigures().of('measure.leafMm', 0).unit
  const leafWords = useLeafWords()
  const leaves =
    line.method === 'leaves'
      ? leafWords(leavesOfLine(line), 'measure:log', unit)
      : t(`measure:log.by.${line.method}`, { points: line.points?.length ?? 0 })
  const showed = useLineWords()(line, tool)
  const words = [line.who, line.note].filter(Boolean).join(': ')
  return (
    <li>
      <span className="muted">{shortDate(line.at)}</span>
      <span>
        {t(`common:stage.${line.stage}`)} {leaves}
      </span>
      <span className="muted reading-words">{[showed, words].filter(Boolean).join('. ')}</span>
      {editable && <TakeOut line={line} tool={tool} leaves={leaves} />}
    </li>
  )
}

interface TakeOutProps {
  readonly line: BenchLog
  readonly tool: Tool
  readonly leaves: string
}

const TakeOut = ({ line, tool, leaves }: TakeOutProps) => {
  const t = useTexts()
  const takeOut = async () => {
    const removed = await removeReading(line, tool.name)
    if (!removed.ok && removed.problems[0]) sayProblem(removed.problems[0])
  }
  const stage = t(`common:stage.${line.stage}`)
  return (
    <button
      type="button"
      className="word"
      aria-label={t('measure:log.removeLabel', { date: shortDate(line.at), stage, leaves })}
      onClick={() => void takeOut()}
    >
      {t('measure:log.remove')}
    </button>
  )
}
