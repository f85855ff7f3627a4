import { useState } from 'react'
import type { Problem } from '../../../geometry/result.ts'
import { checkSheet } from '../../../main/contract/labelPlaces.ts'
import { labelSheets, positionCount } from '../../../main/contract/labelSheets.ts'
import type { LabelItem } from '../../../main/contract/labels.ts'
import { Problems } from '../../ui/Problems.tsx'
import { Sheet } from '../../ui/Sheet.tsx'
import { Tick } from '../../ui/Tick.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { ForWhat } from './ForWhat.tsx'
import './labels.css'
import { type LabelLine, useLines } from './lines.ts'
import { OnWhat } from './OnWhat.tsx'
import { Preview } from './Preview.tsx'
import { closeLabels, startAt, takeSheet, useLabels } from './useLabels.ts'
import { useMaking } from './useMaking.ts'

/** What labels are for, which sheet they go on, and where a started one goes on. */
export const LabelsSheet = ({ items }: { readonly items: readonly LabelItem[] }) => {
  const t = useTexts()
  const { sheet, first } = useLabels()
  const [own, setOwn] = useState(!labelSheets.some((each) => each === sheet))
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set(items.map(({ id }) => id)))
  const [outlines, setOutlines] = useState(false)
  const lines = useLines(items)
  const chosen = lines.filter(({ id }) => ticked.has(id))
  const making = useMaking(closeLabels)
  const checked = checkSheet(sheet)
  const problems: readonly Problem[] = checked.ok ? making.problems : checked.problems
  return (
    <Sheet title={t('labels:sheetTitle')} onClose={closeLabels}>
      <div className="labels">
        <div className="labels-choices">
          <ForWhat lines={lines} ticked={ticked} onTick={setTicked} />
          <OnWhat sheet={sheet} onTake={takeSheet} own={own} onOwn={setOwn} />
          <Tick name={t('labels:outlines')} checked={outlines} onTick={setOutlines} />
        </div>
        <Preview sheet={sheet} first={first} codes={chosen.map(({ code }) => code)} onFirst={startAt} />
      </div>
      <Problems problems={problems} />
      <div className="sheet-keys">
        <button
          type="button"
          className="key key-main"
          disabled={chosen.length === 0 || !checked.ok || making.busy}
          onClick={() => void making.make(itemsOf(chosen), sheet, first, outlines)}
        >
          {t('labels:make')}
        </button>
        {making.busy && (
          <button type="button" className="key" onClick={making.stop}>
            {t('labels:stop')}
          </button>
        )}
        <p role="status">{making.busy ? t('labels:making') : <Outcome count={chosen.length} />}</p>
      </div>
      <p className="muted">{t('labels:print')}</p>
    </Sheet>
  )
}

const itemsOf = (lines: readonly LabelLine[]): LabelItem[] => lines.map(({ noun, id }) => ({ noun, id }))

/** How many labels there will be, and where they begin. */
const Outcome = ({ count }: { readonly count: number }) => {
  const t = useTexts()
  const { sheet, first } = useLabels()
  if (count === 0) return t('labels:first.nothing')
  if (sheet.paper === 'single') return t('labels:first.rolls', { count })
  const sheets = Math.ceil((first - 1 + count) / positionCount(sheet))
  const place = { row: Math.floor((first - 1) / sheet.columns) + 1, column: ((first - 1) % sheet.columns) + 1 }
  return t(`labels:first.${sheets === 1 ? 'willOne' : 'will'}`, { count, sheets, ...place })
}
