import { useEffect, useRef, useState } from 'react'
import type { Job } from '../../geometry/job.ts'
import { useApp } from '../app/store.ts'
import { problemSentence, useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import type { LiveGrind } from '../worker/liveGrind.ts'
import { BevelView } from './BevelView.tsx'
import { GlassView } from './GlassView.tsx'
import './grind.css'
import { Keys, type Speed, speeds } from './Keys.tsx'
import { MotionFields } from './MotionFields.tsx'
import { PressureView } from './PressureView.tsx'
import { RunStrip } from './RunStrip.tsx'
import { Stage } from './Stage.tsx'
import { momentSentence } from './sentence.ts'
import { type Moment, type Running, useLiveGrind, useMoment, useRunProblems } from './useLiveGrind.ts'
import { usePalette } from './useScreen.ts'
import { Views } from './Views.tsx'

/** Grind: the moving model, the glass, and the whole grind to go back and forth in. */
export const GrindScreen = () => {
  const t = useTexts()
  const job = useApp((app) => app.job?.document ?? null)
  const { live, running } = useLiveGrind(job)
  if (!job) return <p className="grind-empty">{t('grind:empty.noJob')}</p>
  if (!live || !running) return <Waiting live={live} />
  return <GrindAlive running={running} job={job} />
}

/** Nothing to show yet: because it is being set up, or because the job does not allow it. */
const Waiting = ({ live }: { readonly live: LiveGrind | null }) => {
  const t = useTexts()
  const ofRun = useRunProblems(live)
  const ofJob = useApp((app) => app.problems)
  const problems = ofJob.length > 0 ? ofJob : ofRun
  if (problems.length === 0) return <p className="grind-empty">{t('grind:empty.starting')}</p>
  return (
    <div className="grind-empty" role="status">
      <p>{t('grind:empty.cannot')}</p>
      {problems.map((found) => (
        <p key={`${found.code} ${found.path}`}>{problemSentence(t, found)}</p>
      ))}
    </div>
  )
}

const GrindAlive = ({ running, job }: { readonly running: Running; readonly job: Job }) => {
  const moment = useMoment(running)
  const palette = usePalette()
  const [lifted, setLifted] = useState(false)
  const [homeCount, setHomeCount] = useState(0)
  const report = useApp((app) => app.report)
  const tool = useApp((app) => app.tool)
  const rotation = useApp((app) => app.station?.rotation ?? 'intoEdge')
  const dot = tool?.dotCorner ?? 'left'
  const views = { running, moment, lifted }
  const lift = (up: boolean) => {
    if (up) running.live.pause()
    setLifted(up)
  }
  return (
    <div className="grind-screen">
      <div className="grind-stage">
        <Stage {...views} palette={palette} dot={dot} rotation={rotation} homeCount={homeCount} />
      </div>
      <Views>
        {(plotPx) => (
          <>
            <MotionFields motion={job.motion} />
            <PressureView {...views} plotPx={plotPx} />
            <GlassView {...views} plan={report?.plan ?? null} predicted={report?.grind ?? null} plotPx={plotPx} />
            <BevelView {...views} palette={palette} dot={dot} plotPx={plotPx} />
          </>
        )}
      </Views>
      <Time
        running={running}
        moment={moment}
        lifted={lifted}
        wantedMm={report?.plan.reliefMm ?? null}
        onLift={lift}
        onHome={() => setHomeCount((count) => count + 1)}
      />
    </div>
  )
}

interface TimeProps {
  readonly running: Running
  readonly moment: Moment
  readonly lifted: boolean
  readonly wantedMm: number | null
  readonly onLift: (lifted: boolean) => void
  readonly onHome: () => void
}

/** The strip below: what the picture says, the keys, and the run. */
const Time = ({ running, moment, lifted, wantedMm, onLift, onHome }: TimeProps) => {
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

/** The sentence as read aloud is not renewed faster than this while the grind plays (ms). */
const SENTENCE_MS = 3000

interface SentenceProps {
  readonly running: Running
  readonly moment: Moment
  readonly lifted: boolean
  readonly wantedMm: number
}

const Sentence = ({ running, moment, lifted, wantedMm }: SentenceProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const saidMs = useRef(0)
  const [said, setSaid] = useState('')
  const { sweeps, stepsPerSweep } = running.shape
  const now = momentSentence(t, moment, {
    sweeps,
    stepsPerSweep,
    wantedMm,
    lifted,
    inWords: (mm) => inWords(mm, 'mm', 2),
  })
  useEffect(() => {
    const clockMs = performance.now()
    if (moment.playing && clockMs - saidMs.current < SENTENCE_MS) return
    saidMs.current = clockMs
    setSaid(now)
  }, [now, moment.playing])
  return (
    <div className="grind-sentence">
      <p aria-hidden="true">{now}</p>
      <p className="unseen" aria-live="polite">
        {said}
      </p>
    </div>
  )
}
