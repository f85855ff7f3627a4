import type { Side } from '../../../geometry/report.ts'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import type { PanelProps } from '../GrindBar.tsx'
import { ask, putAway, usePredicting } from './predicting.ts'
import { sidesMistaken, verdictOf } from './verdict.ts'

/** What was said beside what came, in figures and words. Another moment or another job has another answer, and says so. */
export const Told = ({ running, moment }: PanelProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { guess, run } = usePredicting()
  if (!guess) return null
  const same = run === running.shape.run && moment.step === guess.sweep * running.shape.stepsPerSweep
  const came = { leftMm: moment.reliefLeftMm, rightMm: moment.reliefRightMm }
  const line = (side: Side) => {
    const [said, is] = side === 'left' ? [guess.leftMm, came.leftMm] : [guess.rightMm, came.rightMm]
    const params = {
      said: inWords(said, 'mm', 2),
      came: inWords(is, 'mm', 2),
      off: inWords(Math.abs(is - said), 'mm', 2),
    }
    return (
      <li key={side} data-verdict={verdictOf(said, is)}>
        <strong>{t(`predict:side.${side}`)}</strong> {t(`predict:verdict.${verdictOf(said, is)}`, params)}
      </li>
    )
  }
  return (
    <>
      <p>{t(same ? 'predict:told' : 'predict:elsewhere', { sweep: guess.sweep })}</p>
      {same && (
        <div role="status">
          <ul className="predict-told">
            {line('left')}
            {line('right')}
            {sidesMistaken(guess, came) && <li>{t('predict:mistaken')}</li>}
          </ul>
        </div>
      )}
      <div className="predict-keys">
        <button type="button" className="key" onClick={ask}>
          {t('predict:again')}
        </button>
        <button type="button" className="key" onClick={putAway}>
          {t('predict:putAway')}
        </button>
      </div>
    </>
  )
}
