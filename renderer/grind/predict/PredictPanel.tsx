import { useEffect, useRef, useState } from 'react'
import { quantities } from '../../../geometry/quantities.ts'
import { FigureField } from '../../ui/FigureField.tsx'
import { useTexts } from '../../ui/texts.tsx'
import type { PanelProps } from '../GrindBar.tsx'
import { useReducedMotion } from '../useScreen.ts'
import { ask, putAway, runGuess, usePredicting } from './predicting.ts'
import { Told } from './Told.tsx'
import './predict.css'

/** Say what will come, let the wheel run, and compare. */
export const PredictPanel = (props: PanelProps) => {
  const stage = usePredicting((now) => now.stage)
  useEffect(() => {
    if (usePredicting.getState().stage === 'idle') ask()
    return () => {
      if (usePredicting.getState().stage === 'asking') putAway()
    }
  }, [])
  return <div className="predict">{stage === 'told' ? <Told {...props} /> : <Asking {...props} />}</div>
}

const Asking = ({ running, moment }: PanelProps) => {
  const t = useTexts()
  const atOnce = useReducedMotion()
  const stage = usePredicting((now) => now.stage)
  const { live, shape } = running
  const mostSweeps = Math.max(Math.floor(moment.lastStep / shape.stepsPerSweep), 1)
  const [sweep, setSweep] = useState(mostSweeps)
  const [leftMm, setLeftMm] = useState<number | null>(null)
  const [rightMm, setRightMm] = useState<number | null>(null)
  const end = useRef<() => void>(() => undefined)
  useEffect(() => () => end.current(), [])
  const ready = leftMm !== null && rightMm !== null && stage !== 'running'
  const run = (): void => {
    if (leftMm === null || rightMm === null) return
    end.current = runGuess(live, { sweep: Math.min(sweep, mostSweeps), leftMm, rightMm }, shape.stepsPerSweep, atOnce)
  }
  return (
    <>
      <p>{t('predict:how')}</p>
      <div className="predict-fields">
        <FigureField
          quantity="motion.sweeps"
          label={t('predict:sweeps')}
          value={sweep}
          range={{ min: quantities.motion.sweeps.min, max: mostSweeps }}
          onCommit={(value) => value !== null && setSweep(value)}
        />
        <FigureField quantity="aim.reliefMm" label={t('predict:left')} value={leftMm} allowEmpty onCommit={setLeftMm} />
        <FigureField
          quantity="aim.reliefMm"
          label={t('predict:right')}
          value={rightMm}
          allowEmpty
          onCommit={setRightMm}
        />
      </div>
      <button type="button" className="key" disabled={!ready} onClick={run}>
        {t(stage === 'running' ? 'predict:running' : 'predict:run')}
      </button>
      {!ready && stage !== 'running' && <p className="muted">{t('predict:needsBoth')}</p>}
    </>
  )
}
