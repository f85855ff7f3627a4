import { FigureField } from '../ui/FigureField.tsx'
import { useTexts } from '../ui/texts.tsx'
import { changeSheet, outOf, type ShavingsDraft } from './bench.ts'
import type { EntriesProps } from './Entries.tsx'
import { LastTime } from './LastTime.tsx'
import { LengthField } from './LeavesEntry.tsx'
import './ways.css'

/** Three shavings from a strip narrower than the iron: what the wood really gets. */
export const ShavingsEntry = ({ tool, sheet, newest, problems }: EntriesProps) => {
  const t = useTexts()
  const all = sheet.problem ? [...problems, sheet.problem] : problems
  const change = (patch: Partial<ShavingsDraft>) => changeSheet(tool.id, { shavings: { ...sheet.shavings, ...patch } })
  const thickness = (key: 'leftMm' | 'middleMm' | 'rightMm') => (
    <LengthField
      label={t(`measure:shavings.${key}`)}
      value={sheet.shavings[key]}
      problem={all.find(({ path }) => path === key) ?? null}
      onCommit={(value) => change({ [key]: value })}
    />
  )
  return (
    <div className="entries-leaves entries-shavings">
      <LastTime tool={tool} newest={newest} />
      {thickness('leftMm')}
      {thickness('middleMm')}
      {thickness('rightMm')}
      <FigureField
        quantity="measure.outMm"
        label={t('measure:shavings.outMm')}
        value={outOf(sheet.shavings, tool)}
        range={{ min: 1, max: tool.widthMm / 2 }}
        onCommit={(outMm) => change({ outMm })}
      />
    </div>
  )
}
