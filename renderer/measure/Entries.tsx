import type { MeasuredEdge } from '../../geometry/measure.ts'
import type { Problem } from '../../geometry/result.ts'
import { type BenchLog, type BenchLogDraft, methods, stages, type Tool } from '../../main/contract/entities.ts'
import { TextEntry } from '../ui/Entry.tsx'
import { FigureField } from '../ui/FigureField.tsx'
import { Options } from '../ui/Options.tsx'
import { useTexts } from '../ui/texts.tsx'
import { changeSheet, type Method, type Sheet, setStep, useBench } from './bench.ts'
import './entries.css'
import { Keep } from './Keep.tsx'
import { LeavesEntry } from './LeavesEntry.tsx'
import { PointsEntry } from './PointsEntry.tsx'
import { ProfileEntry } from './ProfileEntry.tsx'
import { ShavingsEntry } from './ShavingsEntry.tsx'

export interface EntriesProps {
  readonly tool: Tool
  readonly sheet: Sheet
  readonly stage: BenchLogDraft['stage']
  /** The newest reading taken in the way of the sheet. */
  readonly newest: BenchLog | undefined
  /** Why what is typed cannot be of one edge. */
  readonly problems: readonly Problem[]
  /** What it shows; null: nothing yet. */
  readonly edge: MeasuredEdge | null
}

const entryOf: Readonly<Record<Method, (props: EntriesProps) => React.ReactNode>> = {
  leaves: LeavesEntry,
  points: PointsEntry,
  shavings: ShavingsEntry,
  trace: ProfileEntry,
}

/** What is measured, in one of four ways, and the one key that keeps it. */
export const Entries = (props: EntriesProps) => {
  const t = useTexts()
  const { tool, sheet, stage, edge } = props
  const Entry = entryOf[sheet.method]
  return (
    <section className="entries" aria-label={t('measure:entries.heading')}>
      <Way tool={tool} method={sheet.method} />
      <Entry {...props} />
      <Beside {...props} />
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

/** A tool without a seat takes no shaving that could be measured. */
const Way = ({ tool, method }: { readonly tool: Tool; readonly method: Method }) => {
  const t = useTexts()
  const ways = methods.filter((each) => each !== 'shavings' || tool.seatAngleDeg !== null)
  return (
    <Options
      legend={t('measure:way.legend')}
      options={ways.map((value) => ({ value, name: t(`measure:way.${value}`) }))}
      value={method}
      onChoose={(value) => changeSheet(tool.id, { method: value })}
    />
  )
}

/** How fine the way reads, what the grind took, and a note. */
const Beside = ({ tool, sheet, stage }: EntriesProps) => {
  const t = useTexts()
  const stepMm = useBench((bench) => bench.stepsMm[sheet.method])
  return (
    <div className="entries-beside">
      <FigureField
        quantity="measure.stepMm"
        label={t(`measure:entries.step.${sheet.method}`)}
        value={stepMm}
        onCommit={(value) => value !== null && setStep(sheet.method, value)}
      />
      {stage === 'asGround' && (
        <>
          <FigureField
            quantity="measure.groundMinutes"
            size="small"
            value={sheet.groundMinutes}
            allowEmpty
            onCommit={(groundMinutes) => changeSheet(tool.id, { groundMinutes })}
          />
          <FigureField
            quantity="measure.setBackMm"
            size="small"
            value={sheet.setBackMm}
            allowEmpty
            onCommit={(setBackMm) => changeSheet(tool.id, { setBackMm })}
          />
        </>
      )}
      <TextEntry
        name={t('measure:entries.note')}
        value={sheet.note}
        onChange={(note) => changeSheet(tool.id, { note })}
      />
    </div>
  )
}
