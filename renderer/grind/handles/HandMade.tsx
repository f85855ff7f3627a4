import { useApp } from '../../app/store.ts'
import { useTexts } from '../../ui/texts.tsx'
import { handSweeps, withHandMotion } from '../handMotion.ts'
import { type Moment, type Running, useTold } from '../useLiveGrind.ts'

interface HandMadeProps {
  readonly running: Running
  readonly moment: Moment
  /** Gives the hand's work up for the planned run. */
  readonly onAgain: () => void
}

/** What can be done with sweeps made by hand: keep them as the job's motion, or go back to the plan. */
export const HandMade = ({ running, moment, onAgain }: HandMadeProps) => {
  const t = useTexts()
  const made = useTold(running.live, () => running.live.handMade)
  // It stays while the blade is taken in hand again, so that nothing moves under the hand.
  if (!made || moment.handFromStep === null) return null
  const keep = () => void useApp.getState().editJob((job) => withHandMotion(job, made) ?? job)
  return (
    <div className="hand-made">
      {handSweeps(running.job, made) > 0 ? (
        <button type="button" className="key" onClick={keep}>
          {t('handles:made.keep')}
        </button>
      ) : (
        <p>{t('handles:made.part')}</p>
      )}
      <button type="button" className="key" onClick={onAgain}>
        {t('handles:made.plan')}
      </button>
    </div>
  )
}
