import { useCallback, useEffect, useState } from 'react'
import type { Problem } from '../../../geometry/result.ts'
import type { CallOutput } from '../../../main/contract/calls.ts'
import { loadAll } from '../../app/readRack.ts'
import { say, useApp } from '../../app/store.ts'
import { saveSettings } from '../../app/storeRack.ts'
import { call } from '../../app/transport.ts'
import { momentText } from '../../ui/dates.ts'
import { FigureField } from '../../ui/FigureField.tsx'
import { Problems } from '../../ui/Problems.tsx'
import { Sheet } from '../../ui/Sheet.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { CopyLine } from './CopyLine.tsx'
import './copies.css'

/** Copies of the data: when they were made, what is in them, and the way back to one. */
export const CopiesSheet = ({ onClose }: { readonly onClose: () => void }) => {
  const t = useTexts()
  const [list, setList] = useState<CallOutput<'copy.list'> | null>(null)
  const mostMb = useApp((app) => app.settings.copiesMostMb)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const read = useCallback(async () => {
    const listed = await call('copy.list', {})
    if (listed.ok) setList(listed.value)
    setProblems(listed.ok ? [] : listed.problems)
  }, [])
  useEffect(() => void read(), [read])
  const make = async (): Promise<void> => {
    const made = await call('copy.make', {})
    if (made.ok) await read()
    else setProblems(made.problems)
  }
  const goBack = async (name: string): Promise<void> => {
    const gone = await call('copy.restore', { name })
    if (!gone.ok) return setProblems(gone.problems)
    await loadAll()
    say('copies:gone', { at: momentText(gone.value.at) })
    onClose()
  }
  return (
    <Sheet title={t('copies:title')} onClose={onClose}>
      <div className="copies">
        <p>{t('copies:how')}</p>
        <FigureField
          quantity="care.copiesMostMb"
          size="small"
          value={mostMb}
          onCommit={(copiesMostMb) => copiesMostMb !== null && void saveSettings({ copiesMostMb })}
        />
        <Problems problems={problems} />
        <button type="button" className="key" onClick={() => void make()}>
          {t('copies:make')}
        </button>
        {list && list.copies.length === 0 && <p className="muted">{t('copies:none')}</p>}
        <ul className="copies-list">
          {list?.copies.map((copy) => (
            <CopyLine key={copy.name} copy={copy} onGoBack={goBack} />
          ))}
        </ul>
        {list && <p className="muted copies-folder">{t('copies:folder', { folder: list.folder })}</p>}
      </div>
    </Sheet>
  )
}
