import type { Job } from '../../geometry/job.ts'
import { useApp } from '../app/store.ts'
import { FigureField } from '../ui/FigureField.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { overLengthMm, shiftStops, withShift } from './corrections.ts'
import { changeSquare } from './setting.ts'

interface CorrectionProps {
  readonly job: Job
  /** Null: nothing measured yet. */
  readonly skewDeg: number | null
  readonly wantedDeg: number
  readonly place: string
}

/** What turns the edge back to square, or to the skew that is wanted. */
export const Correction = ({ job, skewDeg, wantedDeg, place }: CorrectionProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const turnDeg = wantedDeg - (skewDeg ?? 0)
  const side = t(`common:side.${turnDeg > 0 ? 'right' : 'left'}`)
  const angle = inWords(Math.abs(turnDeg), 'deg', 2)
  return (
    <section aria-label={t('square:correct.heading')}>
      <h2>{t('square:correct.heading')}</h2>
      <FigureField
        quantity="square.wantedDeg"
        value={wantedDeg}
        onCommit={(value) => value !== null && changeSquare(place, { wantedDeg: value })}
      />
      {turnDeg === 0 ? (
        <p className="muted">{t('square:correct.nothing')}</p>
      ) : (
        <>
          <p>{t('square:correct.turn', { angle, side })}</p>
          <ByStops job={job} turnDeg={turnDeg} />
          <p>{t('square:correct.clamp', { angle, side })}</p>
          <p className="muted">{t('square:correct.bar', { by: inWords(Math.abs(overLengthMm(turnDeg)), 'mm', 2) })}</p>
        </>
      )}
    </section>
  )
}

const ByStops = ({ job, turnDeg }: { readonly job: Job; readonly turnDeg: number }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const editJob = useApp((app) => app.editJob)
  const shift = shiftStops(job, turnDeg)
  if (shift === null) return <p className="muted">{t('square:correct.noStops')}</p>
  if (!shift.reachable) {
    const words = { by: inWords(Math.abs(shift.addedMm), 'mm', 2) }
    return <p className="muted">{t('square:correct.beyond', words)}</p>
  }
  const set = shift.leftTurns === job.motion.stopTurnsLeft && shift.rightTurns === job.motion.stopTurnsRight
  return (
    <p>
      {t('square:correct.stops', {
        left: inWords(shift.leftTurns, 'turn', 2),
        right: inWords(shift.rightTurns, 'turn', 2),
        by: inWords(Math.abs(shift.addedMm), 'mm', 2),
      })}{' '}
      {set ? (
        <span className="muted">{t('square:correct.set')}</span>
      ) : (
        <button type="button" className="key" onClick={() => void editJob((now) => withShift(now, shift))}>
          {t('square:correct.use')}
        </button>
      )}
    </p>
  )
}
