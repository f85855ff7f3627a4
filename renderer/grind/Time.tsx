import { useLayoutEffect, useRef, useState } from 'react'
import { useActions } from '../app/actions.ts'
import { problemSentence, useTexts } from '../ui/texts.tsx'
import type { LiveGrind } from '../worker/liveGrind.ts'
import { Sentence } from './GrindSentence.tsx'
import { HandMade } from './handles/HandMade.tsx'
import { Keys } from './Keys.tsx'
import { isLost, Lost } from './Lost.tsx'
import { RunStrip } from './RunStrip.tsx'
import { type Speed, SpeedChoice, speedBeside, speeds } from './SpeedChoice.tsx'
import { type Moment, type Running, useRunProblems } from './useLiveGrind.ts'
import './time.css'

interface TimeProps {
  readonly running: Running
  readonly moment: Moment
  readonly lifted: boolean
  readonly wantedMm: number | null
  /** Relief that the whole grind is predicted to leave; null: not known, or not to be told. */
  readonly foretoldMm: number | null
  readonly onLift: (lifted: boolean) => void
  readonly onHome: () => void
  /** Back to where the job begins, the hand's work given up. */
  readonly onAgain: () => void
  /** Makes the worker anew after it was lost. */
  readonly onRecover: () => void
}

/** Seeks from where the run was last asked to be: keys pressed quicker than pictures come count each. */
const useSeek = ({ live }: Running, { step, playing, lastStep }: Moment) => {
  const asked = useRef<number | null>(null)
  useLayoutEffect(() => {
    if (playing || step === asked.current || (asked.current ?? 0) > lastStep) asked.current = null
  })
  return {
    from: (): number => asked.current ?? step,
    seek: (to: number): void => {
      asked.current = Math.min(Math.max(to, 0), lastStep)
      live.seek(asked.current)
    },
  }
}

/** The strip below: what the picture says, the keys, and the run. */
export const Time = (props: TimeProps) => {
  const { running, moment, lifted, wantedMm, onLift, onHome, onAgain } = props
  const t = useTexts()
  const [speed, setSpeed] = useState<Speed>('normal')
  const { live, shape } = running
  const { lastStep } = moment
  const { from, seek } = useSeek(running, moment)
  const seekSweep = (sweep: number) => seek(sweep * shape.stepsPerSweep)
  const play = (at: Speed) => {
    onLift(false)
    if (moment.step === lastStep) live.seek(0)
    live.play(speeds[at])
  }
  const changeSpeed = (next: Speed) => {
    setSpeed(next)
    if (moment.playing && !moment.held) live.play(speeds[next])
  }
  const again = () => {
    setSpeed('normal')
    onLift(false)
    onHome()
    if (moment.handFromStep === null) live.seek(0)
    else onAgain()
  }
  const sweepBy = (by: 1 | -1) => {
    const sweep = from() / shape.stepsPerSweep
    seekSweep(by > 0 ? Math.floor(sweep) + 1 : Math.ceil(sweep) - 1)
  }
  const stepBy = (by: 1 | -1) => seek(from() + by)
  useActions({
    play: () => (moment.playing ? live.pause() : play(speed)),
    sweepOn: () => sweepBy(1),
    sweepBack: () => sweepBy(-1),
    stepOn: () => stepBy(1),
    stepBack: () => stepBy(-1),
    toStart: () => seek(0),
    toEnd: () => seek(lastStep),
    again,
    faster: () => changeSpeed(speedBeside(speed, 1)),
    slower: () => changeSpeed(speedBeside(speed, -1)),
    lift: () => onLift(!lifted),
    viewHome: onHome,
  })
  return (
    <section className="grind-time" aria-label={t('grind:run.label')}>
      <RunTrouble live={live} onRecover={props.onRecover} />
      <Sentence running={running} moment={moment} lifted={lifted} wantedMm={wantedMm} foretoldMm={props.foretoldMm} />
      <HandMade running={running} moment={moment} onAgain={onAgain} />
      <Keys
        playing={moment.playing}
        atStart={moment.step === 0}
        atEnd={moment.step === lastStep}
        lifted={lifted}
        onPlay={() => play(speed)}
        onPause={() => live.pause()}
        onSweep={sweepBy}
        onStep={stepBy}
        onAgain={again}
        onLift={onLift}
        onHome={onHome}
      />
      <div className="sweep-counter">
        <span data-testid="sweep">{Math.floor(moment.sweep)}</span>
        <small>{t('grind:run.of', { count: Math.floor(lastStep / shape.stepsPerSweep) })}</small>
        <SpeedChoice speed={speed} onChoose={changeSpeed} />
      </div>
      <RunStrip running={running} moment={moment} wantedMm={wantedMm} onSeek={seekSweep} onStep={seek} />
    </section>
  )
}

/** The run that ends early says so and why; what was ground before stands. */
const RunTrouble = ({ live, onRecover }: { readonly live: LiveGrind; readonly onRecover: () => void }) => {
  const t = useTexts()
  const problems = useRunProblems(live)
  if (isLost(problems)) return <Lost onRecover={onRecover} />
  return problems[0] ? (
    <p className="run-trouble" role="status">
      {problemSentence(t, problems[0])}
    </p>
  ) : null
}
