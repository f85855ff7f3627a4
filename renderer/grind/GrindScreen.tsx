import { useState } from 'react'
import { useShallow } from 'zustand/react/shallow'
import { meanReliefMm } from '../../geometry/edge.ts'
import type { Job } from '../../geometry/job.ts'
import { useApp } from '../app/store.ts'
import { problemSentence, useTexts } from '../ui/texts.tsx'
import type { LiveGrind } from '../worker/liveGrind.ts'
import { Comparison } from './compare/Comparison.tsx'
import { GrindBar } from './GrindBar.tsx'
import './grind.css'
import { PointedAt } from '../teach/class/PointedAt.tsx'
import { useShowGrind } from '../teach/class/useShowGrind.ts'
import { isLost, Lost } from './Lost.tsx'
import { MotionFields } from './MotionFields.tsx'
import { useForetold } from './predict/predicting.ts'
import { SpokenScene } from './SpokenScene.tsx'
import { Stage } from './Stage.tsx'
import { Time } from './Time.tsx'
import { ToolViews } from './tools/ToolViews.tsx'
import { type Running, useLiveGrind, useMoment, useRunProblems } from './useLiveGrind.ts'
import { usePalette } from './useScreen.ts'
import { Views } from './Views.tsx'
import { useViewing, type ViewName, viewNames } from './viewing.ts'
import { AnyView } from './views/AnyView.tsx'
import { LargeView } from './views/LargeView.tsx'
import type { Room } from './views/room.ts'

/** Grind: the moving model, the glass, and the whole grind to go back and forth in. */
export const GrindScreen = () => {
  const t = useTexts()
  const trial = useApp((app) => app.trial)
  const kept = useApp((app) => app.job?.document ?? null)
  const job = trial?.job ?? kept
  const { live, running, startAgain, recover } = useLiveGrind(job)
  if (!job) return <p className="grind-empty">{t('grind:empty.noJob')}</p>
  if (!live || !running) return <Waiting live={live} onRecover={recover} />
  return <GrindAlive running={running} job={job} onAgain={startAgain} onRecover={recover} />
}

/** Nothing to show yet: because it is being set up, or because the job does not allow it. */
const Waiting = ({ live, onRecover }: { readonly live: LiveGrind | null; readonly onRecover: () => void }) => {
  const t = useTexts()
  const ofRun = useRunProblems(live)
  const ofJob = useApp((app) => app.problems)
  const problems = ofJob.length > 0 ? ofJob : ofRun
  if (problems.length === 0) return <p className="grind-empty">{t('grind:empty.starting')}</p>
  if (isLost(ofRun)) return <Lost onRecover={onRecover} />
  return (
    <div className="grind-empty" role="status">
      <p>{t('grind:empty.cannot')}</p>
      {problems.map((found) => (
        <p key={`${found.code} ${found.path}`}>{problemSentence(t, found)}</p>
      ))}
    </div>
  )
}

interface GrindAliveProps {
  readonly running: Running
  readonly job: Job
  readonly onAgain: () => void
  readonly onRecover: () => void
}

const GrindAlive = ({ running, job, onAgain, onRecover }: GrindAliveProps) => {
  const t = useTexts()
  const moment = useMoment(running)
  const palette = usePalette()
  const [lifted, setLifted] = useState(false)
  const [homeCount, setHomeCount] = useState(0)
  const report = useApp((app) => app.report)
  const tool = useApp((app) => app.tool)
  const rotation = useApp((app) => app.station?.rotation ?? 'intoEdge')
  const dot = tool?.dotCorner ?? 'left'
  const views = { running, moment, lifted }
  useShowGrind(running, lifted)
  const lift = (up: boolean) => {
    if (up) running.live.pause()
    setLifted(up)
  }
  const trial = useApp((app) => app.trial)
  const foretold = useForetold()
  const { shown, large, look } = useViewing(useShallow(({ shown, large, look }) => ({ shown, large, look })))
  const shared = {
    ...views,
    palette,
    dot,
    plan: report?.plan ?? null,
    predicted: foretold ? (report?.grind ?? null) : null,
  }
  const view = (name: ViewName, room: Room) => <AnyView key={name} name={name} room={room} {...shared} />
  return (
    <div className="grind-screen" data-large={large ?? undefined}>
      {trial && <Trial {...trial} />}
      <GrindBar {...views} />
      <Comparison running={running} />
      {large && <LargeView view={large}>{(room) => view(large, room)}</LargeView>}
      <PointedAt className="grind-stage" data-look={look} data-picture={t('out:model')}>
        <Stage {...views} palette={palette} dot={dot} rotation={rotation} homeCount={homeCount} />
        <SpokenScene {...views} wantedMm={report?.plan.reliefMm ?? null} rotation={rotation} dot={dot} />
      </PointedAt>
      <Time
        running={running}
        moment={moment}
        lifted={lifted}
        wantedMm={report?.plan.reliefMm ?? null}
        foretoldMm={shared.predicted && meanReliefMm(shared.predicted)}
        onLift={lift}
        onHome={() => setHomeCount((count) => count + 1)}
        onAgain={onAgain}
        onRecover={onRecover}
      />
      <Views>
        {(plotPx) => (
          <>
            {trial === null && <MotionFields motion={job.motion} />}
            <ToolViews {...views} plotPx={plotPx} />
            {viewNames.map((name) => shown[name] && name !== large && view(name, { plotPx, heightPx: null }))}
          </>
        )}
      </Views>
    </div>
  )
}

/** Says what is being shown instead of the job, and leads back to it. */
const Trial = ({ of, name }: { readonly of: 'fault' | 'file'; readonly name: string }) => {
  const t = useTexts()
  return (
    <p className="grind-trial" role="status">
      {t(`grind:trial.${of}`, { name })}{' '}
      <button type="button" className="key" onClick={() => useApp.setState({ trial: null })}>
        {t('grind:trial.leave')}
      </button>
    </p>
  )
}
