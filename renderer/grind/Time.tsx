import { useState } from 'react'
import { problemSentence, useTexts } from '../ui/texts.tsx'
import type { LiveGrind } from '../worker/liveGrind.ts'
import { Sentence } from './GrindSentence.tsx'
import { Keys, type Speed, speeds } from './Keys.tsx'
import { RunStrip } from './RunStrip.tsx'
import { type Moment, type Running, useRunProblems } from './useLiveGrind.ts'
import './time.css'

interface TimeProps {
  readonly running: Running
  readonly moment: Moment
  readonly lifted: boolean
  readonly wantedMm: number | null
  readonly onLift: (lifted: boolean) => void
  readonly onHome: () => void
}

/** The strip below: what the picture says, the keys, and the run. */
export const Time = ({ running, moment, lifted, wantedMm, onLift, onHome }: TimeProps) => {
  const t = useTexts()
  const [speed, setSpeed] = useState<Speed>('normal')
  const { live, shape } = running
  const lastStep = shape.sweeps * shape.stepsPerSweep
  const sweep = Math.floor(moment.sweep)
  const seek = (to: number) => live.seek(Math.min(Math.max(to, 0), shape.sweeps) * shape.stepsPerSweep)
  const play = (at: Speed) => {
    onLift(false)
    if (moment.step === lastStep) live.seek(0)
    live.play(speeds[at])
  }
  const changeSpeed = (next: Speed) => {
    setSpeed(next)
    if (moment.playing) live.play(speeds[next])
  }
  return (
    <section className="grind-time" aria-label={t('grind:run.label')}>
      <RunTrouble live={live} />
      <Sentence running={running} moment={moment} lifted={lifted} wantedMm={wantedMm ?? 0} />
      <Keys
        playing={moment.playing}
        atStart={moment.step === 0}
        atEnd={moment.step === lastStep}
        speed={speed}
        lifted={lifted}
        onPlay={() => play(speed)}
        onPause={() => live.pause()}
        onStep={(by) => seek(by > 0 ? sweep + 1 : Math.ceil(moment.sweep) - 1)}
        onSpeed={changeSpeed}
        onLift={onLift}
        onHome={onHome}
      />
      <p className="sweep-counter">
        <span data-testid="sweep">{sweep}</span>
        <small>{t('grind:run.of', { sweeps: shape.sweeps })}</small>
      </p>
      <RunStrip running={running} moment={moment} wantedMm={wantedMm} onSeek={seek} />
    </section>
  )
}

/** The run that ends early says so and why; what was ground before stands. */
const RunTrouble = ({ live }: { readonly live: LiveGrind }) => {
  const t = useTexts()
  const [problem] = useRunProblems(live)
  return problem ? (
    <p className="run-trouble" role="status">
      {problemSentence(t, problem)}
    </p>
  ) : null
}
