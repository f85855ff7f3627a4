import type { Problem } from '../../geometry/result.ts'
import { useApp } from '../app/store.ts'
import { FigureField } from '../ui/FigureField.tsx'
import { problemSentence, useTexts } from '../ui/texts.tsx'
import { changeSheet } from './bench.ts'
import type { EntriesProps } from './Entries.tsx'
import { takeAgain } from './lastTime.ts'
import { type Leaves, leavesOfCard, leavesOfLine, pathOf } from './reading.ts'
import { Touch } from './Touch.tsx'
import { useLeafWords } from './words.ts'

/** The leaves, in the order in which they lie under the straightedge, and the ways to fill them in one touch. */
export const LeavesEntry = ({ tool, sheet, newest, problems }: EntriesProps) => {
  const t = useTexts()
  const all = sheet.problem ? [...problems, sheet.problem] : problems
  const leaf = (key: keyof Leaves) => (
    <LengthField
      label={t(`measure:entries.${key}`)}
      value={sheet.leaves[key]}
      problem={all.find(({ path }) => path === pathOf[key]) ?? null}
      onCommit={(value) => changeSheet(tool.id, { leaves: { ...sheet.leaves, [key]: value } })}
    />
  )
  return (
    <>
      <OneTouch tool={tool} newest={newest} />
      <div className="entries-leaves as-it-lies">
        {leaf('leftMm')}
        {leaf('halfwayMm')}
        {leaf('rightMm')}
      </div>
    </>
  )
}

interface LengthFieldProps {
  readonly label: string
  readonly value: number | null
  readonly problem: Problem | null
  readonly onCommit: (value: number | null) => void
}

/** A gap or a thickness. */
export const LengthField = ({ problem, ...rest }: LengthFieldProps) => {
  const t = useTexts()
  const words = problem && problemSentence(t, problem)
  return <FigureField {...rest} quantity="measure.leafMm" size="large" allowEmpty problem={words} />
}

const OneTouch = ({ tool, newest }: Pick<EntriesProps, 'tool' | 'newest'>) => {
  const t = useTexts()
  const report = useApp((app) => app.report)
  const leafWords = useLeafWords()
  const words = (leaves: Leaves) => leafWords(leaves, 'measure:entries')
  const card = report && leavesOfCard(report)
  return (
    <div className="entries-touch">
      {newest && (
        <Touch
          name={t('measure:entries.asLastTime')}
          words={words(leavesOfLine(newest))}
          onTouch={() => takeAgain(newest, '')}
        />
      )}
      {card && (
        <Touch
          name={t('measure:entries.asOnCard')}
          words={words(card)}
          onTouch={() => changeSheet(tool.id, { leaves: card })}
        />
      )}
    </div>
  )
}
