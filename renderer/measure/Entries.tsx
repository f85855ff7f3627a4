import type { MeasuredEdge } from '../../geometry/measure.ts'
import type { Problem } from '../../geometry/result.ts'
import { type BenchLog, type BenchLogDraft, stages, type Tool } from '../../main/contract/entities.ts'
import { useApp } from '../app/store.ts'
import { TextEntry } from '../ui/Entry.tsx'
import { FigureField } from '../ui/FigureField.tsx'
import { Options } from '../ui/Options.tsx'
import { problemSentence, useTexts } from '../ui/texts.tsx'
import { changeSheet, type Sheet, setStep, useBench } from './bench.ts'
import './entries.css'
import { Keep } from './Keep.tsx'
import { type Leaves, leavesOfCard, leavesOfLine, pathOf } from './reading.ts'
import { useLeafWords } from './words.ts'

interface EntriesProps {
  readonly tool: Tool
  readonly sheet: Sheet
  readonly stage: BenchLogDraft['stage']
  readonly newest: BenchLog | undefined
  /** Why the leaves typed cannot be of one edge. */
  readonly problems: readonly Problem[]
  /** What they show; null: nothing yet. */
  readonly edge: MeasuredEdge | null
}

/** The leaves, in the order in which they lie under the straightedge; how far they lie apart; and the ways to fill them in one touch. */
export const Entries = ({ tool, sheet, stage, newest, problems, edge }: EntriesProps) => {
  const t = useTexts()
  const stepMm = useBench((bench) => bench.stepMm)
  const all = sheet.problem ? [...problems, sheet.problem] : problems
  const leaf = (key: keyof Leaves) => (
    <LeafField
      label={t(`measure:entries.${key}`)}
      value={sheet.leaves[key]}
      problem={all.find(({ path }) => path === pathOf[key]) ?? null}
      onCommit={(value) => changeSheet(tool.id, { leaves: { ...sheet.leaves, [key]: value } })}
    />
  )
  return (
    <section className="entries" aria-label={t('measure:entries.heading')}>
      <h2>{t('measure:entries.heading')}</h2>
      <OneTouch tool={tool} newest={newest} />
      <div className="entries-leaves">
        {leaf('leftMm')}
        {leaf('halfwayMm')}
        {leaf('rightMm')}
      </div>
      <div className="entries-beside">
        <FigureField
          quantity="measure.stepMm"
          label={t('measure:entries.stepMm')}
          value={stepMm}
          onCommit={(value) => value !== null && setStep(value)}
        />
        <TextEntry
          name={t('measure:entries.note')}
          value={sheet.note}
          onChange={(note) => changeSheet(tool.id, { note })}
        />
      </div>
      <div className="entries-stage">
        <Options
          legend={t('measure:entries.stage')}
          options={stages.map((value) => ({ value, name: t(`common:stage.${value}`) }))}
          value={stage}
          onChoose={(value) => changeSheet(tool.id, { stage: value })}
        />
        <Keep tool={tool} stage={stage} edge={edge} />
      </div>
    </section>
  )
}

interface LeafFieldProps {
  readonly label: string
  readonly value: number | null
  readonly problem: Problem | null
  readonly onCommit: (value: number | null) => void
}

const LeafField = ({ problem, ...rest }: LeafFieldProps) => {
  const t = useTexts()
  const words = problem && problemSentence(t, problem)
  return <FigureField {...rest} quantity="measure.leafMm" size="large" allowEmpty problem={words} />
}

const OneTouch = ({ tool, newest }: Pick<EntriesProps, 'tool' | 'newest'>) => {
  const t = useTexts()
  const report = useApp((app) => app.report)
  const fill = (leaves: Leaves) => changeSheet(tool.id, { leaves })
  const again = (line: BenchLog) => {
    fill(leavesOfLine(line))
    if (line.leafStepMm !== null) setStep(line.leafStepMm)
  }
  return (
    <div className="entries-touch">
      {newest && (
        <Touch name={t('measure:entries.asLastTime')} leaves={leavesOfLine(newest)} onTouch={() => again(newest)} />
      )}
      {report && (
        <Touch
          name={t('measure:entries.asOnCard')}
          leaves={leavesOfCard(report)}
          onTouch={() => fill(leavesOfCard(report))}
        />
      )}
    </div>
  )
}

interface TouchProps {
  readonly name: string
  readonly leaves: Leaves
  readonly onTouch: () => void
}

/** A key that fills in leaves, with the leaves it fills in beside it. */
const Touch = ({ name, leaves, onTouch }: TouchProps) => {
  const words = useLeafWords()(leaves, 'measure:entries')
  return (
    <p>
      <button type="button" className="key" onClick={onTouch}>
        {name}
      </button>
      <span className="muted">{words}</span>
    </p>
  )
}
