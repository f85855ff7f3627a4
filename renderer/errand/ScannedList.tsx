import { placePath } from '../../main/contract/placePath.ts'
import { useApp } from '../app/store.ts'
import { problemSentence, useTexts } from '../ui/texts.tsx'
import { type Scanned, startAnew, takeBack, useErrand } from './useErrand.ts'

/** What was scanned, newest first: what was done to each, or why not. */
export const ScannedList = () => {
  const t = useTexts()
  const scanned = useErrand((state) => state.scanned)
  if (scanned.length === 0) return <p className="muted">{t('errand:none')}</p>
  const [newest] = scanned
  const done = scanned.filter(({ problem, takenBack }) => problem === null && !takenBack).length
  return (
    <section aria-label={t('errand:list')}>
      <div className="errand-head">
        <h2>{t('errand:done', { count: done })}</h2>
        <button type="button" className="word" onClick={startAnew}>
          {t('errand:anew')}
        </button>
      </div>
      <p role="status" className="unseen">
        {newest && !newest.problem && (
          <>
            {newest.code} {newest.name}: <Outcome scanned={newest} />
          </>
        )}
      </p>
      <ol className="errand-list">
        {scanned.map((each) => (
          <ScannedLine key={each.key} scanned={each} />
        ))}
      </ol>
    </section>
  )
}

const ScannedLine = ({ scanned }: { readonly scanned: Scanned }) => {
  const t = useTexts()
  const { code, name, problem, changeId, takenBack } = scanned
  return (
    <li className="errand-line" data-over={takenBack}>
      <span className="errand-code">{code}</span>
      <span>{name}</span>
      <span className={problem ? 'caution' : 'muted'}>
        {problem ? problemSentence(t, problem) : <Outcome scanned={scanned} />}
      </span>
      {problem === null && changeId > 0 && !takenBack && (
        <button
          type="button"
          className="word"
          aria-label={t('errand:takeBackOf', { code })}
          onClick={() => void takeBack(scanned)}
        >
          {t('errand:takeBack')}
        </button>
      )}
    </li>
  )
}

const Outcome = ({ scanned: { errand, changeId, takenBack } }: { readonly scanned: Scanned }) => {
  const t = useTexts()
  const places = useApp((app) => app.places)
  if (takenBack) return t('errand:takenBack')
  if (changeId === 0) return t('errand:already')
  const place = errand.does === 'place' ? placePath(places, errand.placeId) : ''
  const person = errand.does === 'lend' ? errand.person : ''
  return t(`errand:outcome.${errand.does}`, { place, person })
}
