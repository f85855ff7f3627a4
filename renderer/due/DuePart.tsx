import { useState } from 'react'
import { dueReasons } from '../../main/contract/entities.ts'
import { useApp } from '../app/store.ts'
import { Options } from '../ui/Options.tsx'
import { useTexts } from '../ui/texts.tsx'
import { DueGroup } from './DueGroup.tsx'
import { PutAllOn } from './PutAllOn.tsx'
import { SharpNow } from './SharpNow.tsx'
import './due.css'

const views = ['due', 'sharp'] as const

/** What is due and why, or what is sharp now. */
export const DuePart = () => {
  const t = useTexts()
  const [view, setView] = useState<(typeof views)[number]>('due')
  return (
    <div className="due">
      <Options
        legend={t('due:show')}
        hideLegend
        options={views.map((value) => ({ value, name: t(`due:view.${value}`) }))}
        value={view}
        onChoose={setView}
      />
      {view === 'due' ? <Due /> : <SharpNow />}
    </div>
  )
}

const Due = () => {
  const t = useTexts()
  const { due } = useApp((app) => app.standing)
  return (
    <>
      <p className="sentence">{due === 0 ? t('due:none') : t('due:count', { count: due })}</p>
      {due > 0 && <PutAllOn due={due} />}
      {dueReasons.map((reason) => (
        <DueGroup key={reason} reason={reason} />
      ))}
    </>
  )
}
