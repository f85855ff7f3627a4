import { useEffect, useMemo, useState } from 'react'
import { planOf } from '../../geometry/aim.ts'
import type { Findings } from '../../geometry/lesson/findings.ts'
import { refsOfStep } from '../../geometry/lesson/findings.ts'
import type { LessonStep, LessonView } from '../../geometry/lesson/lesson.ts'
import { type LessonState, valueAt } from '../../geometry/lesson/state.ts'
import '../grind/grind.css'
import type { Keeping } from '../grind/handles/keeping.ts'
import { KeepingWith } from '../grind/handles/keeping.ts'
import { isLost, Lost } from '../grind/Lost.tsx'
import { SpokenScene } from '../grind/SpokenScene.tsx'
import { Stage } from '../grind/Stage.tsx'
import { Time } from '../grind/Time.tsx'
import { type Running, useLiveGrind, useMoment, useRunProblems } from '../grind/useLiveGrind.ts'
import { usePalette, useReducedMotion } from '../grind/useScreen.ts'
import { useTexts } from '../ui/texts.tsx'
import { PointedAt } from './class/PointedAt.tsx'
import { useShowModel } from './class/showing.ts'
import type { StepProps } from './LessonRun.tsx'
import { MachineViews } from './MachineViews.tsx'
import { playThrough } from './playThrough.ts'
import { keepsBack, move, tell } from './teaching.ts'

/** The moving model of a step; what the engine will say is out of sight until something was said. */
export const LessonModel = (props: StepProps) => {
  const t = useTexts()
  const { live, running, startAgain, recover } = useLiveGrind(props.state.job)
  const problems = useRunProblems(live)
  if (isLost(problems)) return <Lost onRecover={recover} />
  if (!running) return <p className="grind-empty">{t('grind:empty.starting')}</p>
  return <Alive {...props} running={running} onAgain={startAgain} onRecover={recover} />
}

interface AliveProps extends StepProps {
  readonly running: Running
  readonly onAgain: () => void
  readonly onRecover: () => void
}

const Alive = (props: AliveProps) => {
  const { running, step, state, teaching, onAgain, onRecover } = props
  const moment = useMoment(running)
  const palette = usePalette()
  const [lifted, setLifted] = useState(false)
  const [homeCount, setHomeCount] = useState(0)
  const keeping = useMemo(() => keepingOf(step, state), [step, state])
  useShow(props)
  const plan = planOf(state.job)
  const wantedMm = plan.ok && speaksOfWanted(step) ? plan.value.reliefMm : null
  const open = !keepsBack(step, teaching.stage) && step.views.some((view) => ground.includes(view))
  const leastDeepMm = leastDeep(props.findings)
  const views = { running, moment, lifted }
  const { dotCorner: dot, rotation, cooling } = state.bench
  useShowModel(running, { lifted, dot, rotation, cooling, views: step.views, wantedMm, leastDeepMm })
  return (
    <KeepingWith value={keeping}>
      <div className="teach-model">
        <PointedAt className="grind-stage">
          <Stage
            {...views}
            palette={palette}
            dot={dot}
            rotation={rotation}
            cooling={cooling}
            typed={false}
            homeCount={homeCount}
          />
          <SpokenScene {...views} wantedMm={wantedMm} rotation={rotation} dot={dot} />
        </PointedAt>
        <MachineViews
          {...views}
          views={step.views}
          wantedMm={wantedMm}
          leastDeepMm={leastDeepMm}
          dot={dot}
          palette={palette}
        />
        {open && (
          <Time
            {...views}
            wantedMm={wantedMm}
            foretoldMm={null}
            onLift={(up) => {
              if (up) running.live.pause()
              setLifted(up)
            }}
            onHome={() => setHomeCount((count) => count + 1)}
            onAgain={onAgain}
            onRecover={onRecover}
          />
        )}
      </div>
    </KeepingWith>
  )
}

/** Views of what the wheel takes off; where none of them is there, nothing is to be ground. */
const ground: readonly LessonView[] = ['glass', 'bevel', 'pressure']

/** Rounding and scratches stay small in the glass (mm), and a middle that lies behind its corners stays in it. */
const LEAST_DEEP_MM = 0.05

const leastDeep = (findings: Findings | null): number =>
  Math.max(LEAST_DEEP_MM, findings?.values.middleBehindMm?.value ?? 0)

/** Handles of what the step lets be moved, which move the lesson's state and nothing of the rack. */
const keepingOf = (step: LessonStep, state: LessonState): Keeping => ({
  may: (id) => step.move.includes(placesOfHandles[id] ?? ''),
  keep: async (kind, value) => {
    const place = placesOfHandles[kind.id]
    if (place === undefined || valueAt(state, place) === null) return false
    move(place, value)
    return true
  },
})

const placesOfHandles: Partial<Record<Parameters<Keeping['may']>[0], string>> = {
  stopLeft: 'motion.stopTurnsLeft',
  stopRight: 'motion.stopTurnsRight',
  projection: 'aim.projectionMm',
  reach: 'motion.fingerReachMm',
}

/** What is wanted is shown where a step speaks of it, and is in the way elsewhere. */
export const speaksOfWanted = (step: LessonStep): boolean => refsOfStep(step).includes('wantedReliefMm')

/** Plays the grind through once something was said, or as soon as something was moved; then tells. Asked again, it stands at its start. */
const useShow = ({ running, step, teaching }: AliveProps): void => {
  const atOnce = useReducedMotion()
  const shows = teaching.stage === 'running'
  const moved = step.run && step.ask?.kind === 'reach' && Object.keys(teaching.moved).length > 0
  const keptBack = keepsBack(step, teaching.stage)
  useEffect(() => {
    if (shows) return playThrough(running, atOnce, tell)
    if (keptBack) running.live.seek(0)
    if (moved) running.live.seek(running.shape.sweeps * running.shape.stepsPerSweep)
    return undefined
  }, [running, shows, moved, keptBack, atOnce])
}
