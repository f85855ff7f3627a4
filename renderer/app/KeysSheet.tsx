import { useState } from 'react'
import { Sheet } from '../ui/Sheet.tsx'
import { Tick } from '../ui/Tick.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useActions } from './actions.ts'
import { keyText } from './keyText.ts'
import { isSingleKey, shortcuts, type Where } from './shortcuts.ts'
import { useApp } from './store.ts'
import { saveSettings } from './storeRack.ts'
import './keysSheet.css'

/** The header's word for the shortcuts, and the sheet it opens. */
export const KeysWord = () => {
  const t = useTexts()
  const [open, setOpen] = useState(false)
  useActions({ keys: () => setOpen(true) })
  return (
    <>
      <button type="button" className="word" title={t('shortcuts:hint')} onClick={() => setOpen(true)}>
        {t('shortcuts:word')}
      </button>
      {open && <KeysSheet onClose={() => setOpen(false)} />}
    </>
  )
}

const KeysSheet = ({ onClose }: { readonly onClose: () => void }) => {
  const t = useTexts()
  return (
    <Sheet title={t('shortcuts:heading')} onClose={onClose}>
      <SingleKeys />
      <div className="keys-lists">
        <KeysList where="everywhere" />
        <KeysList where="grind" />
      </div>
      <p className="muted keys-note">{t('shortcuts:note')}</p>
    </Sheet>
  )
}

/** Whoever speaks to the computer, or presses keys unawares, does without letters and signs. */
const SingleKeys = () => {
  const t = useTexts()
  const on = useApp((app) => app.settings.singleKeys === 'on')
  return (
    <Tick
      name={t('shortcuts:single')}
      checked={on}
      onTick={(checked) => saveSettings({ singleKeys: checked ? 'on' : 'off' })}
    />
  )
}

const KeysList = ({ where }: { readonly where: Where }) => {
  const t = useTexts()
  const on = useApp((app) => app.settings.singleKeys === 'on')
  return (
    <section>
      <h3>{t(`shortcuts:where.${where}`)}</h3>
      <dl className="keys-list">
        {shortcuts
          .filter((each) => each.where === where)
          .map((each) => (
            <div key={each.action} data-off={!on && isSingleKey(each)}>
              <dt>{keyText(t, each)}</dt>
              <dd>
                {t(`shortcuts:action.${each.action}`)}
                {!on && isSingleKey(each) && <span className="keys-off"> {t('shortcuts:off')}</span>}
              </dd>
            </div>
          ))}
      </dl>
    </section>
  )
}
