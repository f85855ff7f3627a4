import { useEffect, useState } from 'react'
import { useTexts } from '../../ui/texts.tsx'
import { ClassModel } from './ClassModel.tsx'
import { CLASS_WINDOW, openClassEnd, type Shown } from './channel.ts'
import './class.css'
import { openClassView } from './showing.ts'

/** The class view: large and clean, it shows what the teacher's window has; in the teacher's own window, how to open it. */
export const ClassPart = () => (window.name === CLASS_WINDOW ? <ClassView /> : <HowToOpen />)

const HowToOpen = () => {
  const t = useTexts()
  return (
    <div className="page-note">
      <p>{t('teach:class.how')}</p>
      <button type="button" className="key" onClick={openClassView}>
        {t('teach:class.open')}
      </button>
    </div>
  )
}

const ClassView = () => {
  const t = useTexts()
  const [shown, setShown] = useState<Shown | null>(null)
  useEffect(() => openClassEnd(setShown), [])
  const empty = !shown || (shown.model === null && shown.heading === '')
  return (
    <div className="class-view" data-models={shown?.frozen && shown.model ? 2 : 1}>
      {empty && <p className="class-waiting">{t('teach:class.waiting')}</p>}
      {shown && !empty && <Words {...shown} />}
      {shown?.frozen && (
        <section className="class-picture" aria-label={t('teach:class.frozen')}>
          <h2>{t('teach:class.frozen')}</h2>
          <ClassModel model={shown.frozen} pointer={null} />
        </section>
      )}
      {shown?.model && (
        <section className="class-picture" aria-label={t('teach:class.now')}>
          {shown.frozen && <h2>{t('teach:class.now')}</h2>}
          <ClassModel model={shown.model} pointer={shown.pointer} />
        </section>
      )}
    </div>
  )
}

const Words = ({ heading, text, question, choices, verdict }: Shown) => (
  <section className="class-words" aria-live="polite">
    <h2>{heading}</h2>
    {text.map((paragraph) => (
      <p key={paragraph}>{paragraph}</p>
    ))}
    {question !== '' && <p className="teach-question">{question}</p>}
    {choices.length > 0 && (
      <ul>
        {choices.map((choice) => (
          <li key={choice}>{choice}</li>
        ))}
      </ul>
    )}
    {verdict !== '' && <p className="class-verdict">{verdict}</p>}
  </section>
)
