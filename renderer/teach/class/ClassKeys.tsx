import { useTexts } from '../../ui/texts.tsx'
import { freeze, openClassView, useShowing } from './showing.ts'

/** What a teacher does with the class view: open it, hold the machine as it stands beside what goes on. */
export const ClassKeys = () => {
  const t = useTexts()
  const here = useShowing((showing) => showing.here)
  const unseen = useShowing(({ here, seen }) => here && !seen)
  const frozen = useShowing((showing) => showing.shown.frozen !== null)
  const model = useShowing((showing) => showing.shown.model !== null)
  return (
    <div className="class-keys">
      <p role="status">{unseen && t('teach:class.unseen')}</p>
      <button type="button" className="word" onClick={openClassView}>
        {t(here ? 'teach:class.front' : 'teach:class.open')}
      </button>
      {here && (model || frozen) && (
        <button type="button" className="word" aria-pressed={frozen} onClick={freeze}>
          {t(frozen ? 'teach:class.letGo' : 'teach:class.freeze')}
        </button>
      )}
    </div>
  )
}
