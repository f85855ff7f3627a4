import type { CallOutput } from '../../main/contract/calls.ts'
import { fixed } from '../../main/contract/figures.ts'
import { useApp } from '../app/store.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'

/** Nearer than this to what the job says is the same, as a share. */
const SAME = 0.01

/** What the wheel takes in a sweep, by the grinds whose loss of length was noted, with the key that puts it into the job. */
export const Removal = ({ removal }: { readonly removal: CallOutput<'station.removal'> }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const station = useApp((app) => app.station)
  const job = useApp((app) => app.job)
  const editJob = useApp((app) => app.editJob)
  if (!station || !job) return null
  const inJob = job.document.motion.removalPerSweepMm3
  const use = (perSweepMm3: number) =>
    editJob((now) => ({ ...now, motion: { ...now.motion, removalPerSweepMm3: Number(perSweepMm3.toPrecision(3)) } }))
  return (
    <section className="learnt-removal" aria-label={t('learnt:removal.heading')}>
      <h2>{t('learnt:removal.of', { station: station.name })}</h2>
      {removal === null ? (
        <p className="muted">{t('learnt:removal.nothing')}</p>
      ) : (
        <>
          <p>
            {t('learnt:removal.says', {
              count: removal.grinds,
              perSweep: inWords(removal.perSweepMm3, 'mm3', 2),
              spread: inWords(removal.spreadMm3, 'mm3', 2),
            })}{' '}
            {removal.sweepSeconds !== null &&
              t('learnt:removal.time', {
                perMinute: inWords(removal.perMinuteMm3 ?? 0, 'mm3', 1),
                seconds: fixed(removal.sweepSeconds, 1),
              })}
          </p>
          {Math.abs(inJob / removal.perSweepMm3 - 1) < SAME ? (
            <p className="muted">{t('learnt:removal.same')}</p>
          ) : (
            <p>
              <button type="button" className="key" onClick={() => void use(removal.perSweepMm3)}>
                {t('learnt:removal.use')}
              </button>{' '}
              <span className="muted">{t('learnt:removal.now', { now: inWords(inJob, 'mm3', 2) })}</span>
            </p>
          )}
        </>
      )}
    </section>
  )
}
