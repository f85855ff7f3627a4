import { useCallback, useEffect, useState } from 'react'
import type { Problem } from '../../../geometry/result.ts'
import type { Change } from '../../../main/contract/entities.ts'
import { recordName } from '../../app/recordName.ts'
import { useApp } from '../../app/store.ts'
import { undo } from '../../app/storeRack.ts'
import { call } from '../../app/transport.ts'
import { momentText } from '../../ui/dates.ts'
import { Options } from '../../ui/Options.tsx'
import { Problems } from '../../ui/Problems.tsx'
import { Sheet } from '../../ui/Sheet.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import { fieldsInWords } from './words.ts'
import './history.css'

/** Lines shown at once: as far back as anybody looks by eye. */
const MOST_LINES = 200

interface HistorySheetProps {
  /** The record whose history it is; null: everything's. */
  readonly of: { readonly id: string; readonly code: string; readonly name: string } | null
  readonly onClose: () => void
}

/** What was changed, when and by whom, each with its undo; and what was taken away and can be brought back. */
export const HistorySheet = ({ of, onClose }: HistorySheetProps) => {
  const t = useTexts()
  const [only, setOnly] = useState<'all' | 'removed'>('all')
  const [changes, setChanges] = useState<readonly Change[] | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const read = useCallback(async () => {
    const listed = await call('change.list', { most: MOST_LINES, only, ...(of && { entityId: of.id }) })
    if (listed.ok) setChanges(listed.value)
    setProblems(listed.ok ? [] : listed.problems)
  }, [of, only])
  useEffect(() => void read(), [read])
  const takeBack = async (change: Change): Promise<void> => {
    await undo(change.id)
    await read()
  }
  return (
    <Sheet title={of ? t('history:ofOne', { code: of.code, name: of.name }) : t('history:title')} onClose={onClose}>
      <div className="history">
        {!of && (
          <Options
            legend={t('history:only.legend')}
            options={(['all', 'removed'] as const).map((value) => ({ value, name: t(`history:only.${value}`) }))}
            value={only}
            onChoose={setOnly}
          />
        )}
        <Problems problems={problems} />
        {changes?.length === 0 && <p className="muted">{t(`history:none.${only}`)}</p>}
        <ul>
          {changes?.map((change) => (
            <ChangeLine key={change.id} change={change} onTakeBack={takeBack} />
          ))}
        </ul>
      </div>
    </Sheet>
  )
}

interface ChangeLineProps {
  readonly change: Change
  readonly onTakeBack: (change: Change) => Promise<void>
}

const ChangeLine = ({ change, onTakeBack }: ChangeLineProps) => {
  const t = useTexts()
  const figures = useFigures()
  const places = useApp((app) => app.places)
  const what = t(`history:action.${change.action}`, { what: recordName(t, change) })
  return (
    <li className="history-line" data-undone={change.undone}>
      <div className="history-head">
        <span className="muted">{momentText(change.at)}</span>
        <span>
          {what}
          {change.who !== '' && <span className="muted"> {t('history:by', { who: change.who })}</span>}
        </span>
        {change.undone && <span className="muted">{t('history:undone')}</span>}
        {!change.undone && change.action !== 'purged' && (
          <button
            type="button"
            className="word"
            aria-label={t('history:takeBackOf', { what })}
            onClick={() => void onTakeBack(change)}
          >
            {t('history:takeBack')}
          </button>
        )}
      </div>
      <ul className="history-fields">
        {fieldsInWords(t, figures, places, change).map(({ name, before, after }) => (
          <li key={name}>{t('history:field', { name, before, after })}</li>
        ))}
      </ul>
    </li>
  )
}
