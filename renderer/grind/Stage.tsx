import { lazy, Suspense, useCallback, useMemo, useRef, useState } from 'react'
import { useApp } from '../app/store.ts'
import { NoPicture } from '../scene/NoPicture.tsx'
import type { Project } from '../scene/SceneView.tsx'
import type { Rotation } from '../scene/wheel.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { changeMotion, changeTurns } from './editMotion.ts'
import { type DrawHandles, Handles } from './Handles.tsx'
import { type DrawOverlay, Overlay } from './Overlay.tsx'
import { PlainStage } from './PlainStage.tsx'
import { stageLabels } from './StageLabels.tsx'
import { type StopDraft, stopsOf } from './stops.ts'
import type { Moment, Running } from './useLiveGrind.ts'
import { usePicture } from './usePicture.ts'
import { type Palette, useLookPalette, useReducedMotion } from './useScreen.ts'
import { useViewing } from './viewing.ts'
import './stage.css'

const SceneView = lazy(async () => ({ default: (await import('../scene/SceneView.tsx')).SceneView }))

interface StageProps {
  readonly running: Running
  readonly moment: Moment
  readonly palette: Palette
  readonly dot: 'left' | 'right'
  readonly rotation: Rotation
  readonly lifted: boolean
  readonly homeCount: number
}

const DIMENSIONS = [
  ['barUnder', 'wheelTop'],
  ['projectionTop', 'projectionEdge'],
] as const

const NONE = [] as const

/** The moving model with what is written round it. */
export const Stage = (props: StageProps) => {
  const { running, moment, lifted } = props
  const { job, setUp } = running
  const t = useTexts()
  const figures = useFigures()
  const reducedMotion = useReducedMotion()
  const picture = usePicture()
  const look = useViewing((viewing) => viewing.look)
  const hidden = useViewing((viewing) => viewing.hidden)
  const palette = useLookPalette(look, props.palette)
  const wet = useApp((app) => app.station?.cooling === 'wet')
  const [draft, setDraft] = useState<StopDraft | null>(null)
  const [reachDraftMm, setReachDraftMm] = useState<number | null>(null)
  const [cameraMoving, setCameraMoving] = useState(false)
  const drawOverlay = useRef<DrawOverlay>(() => undefined)
  const drawHandles = useRef<DrawHandles>(() => undefined)
  const onView = useCallback((project: Project) => {
    drawOverlay.current(project)
    drawHandles.current(project)
  }, [])
  const stops = useMemo(() => stopsOf(job, setUp, draft), [job, setUp, draft])
  const labels = stageLabels({ ...props, t, figures, stops })
  const steered = job.fixture.kind === 'steered' && job.fixture.guideArmMm !== null
  if (picture.drawing === 'none')
    return <PlainStage labels={labels} onAgain={picture.attempt > 0 ? picture.again : null} />
  const plain = <PlainStage labels={labels} onAgain={picture.again} />
  return (
    <NoPicture key={picture.attempt} instead={plain}>
      <Suspense fallback={null}>
        <SceneView
          {...running}
          dot={props.dot}
          rotation={props.rotation}
          dark={palette.dark}
          print={look === 'print'}
          wet={wet}
          hidden={hidden}
          onLost={picture.onLost}
          colours={palette}
          stops={stops}
          lifted={lifted}
          homeCount={props.homeCount}
          reducedMotion={reducedMotion}
          onView={onView}
          onCameraMoving={setCameraMoving}
          label={t('grind:scene.label')}
          moving={moment.playing || cameraMoving}
          software={picture.drawing === 'software'}
        />
      </Suspense>
      {picture.lost && plain}
      <Overlay
        labels={hidden.labels ? NONE : labels}
        dimensions={lifted || hidden.labels ? NONE : DIMENSIONS}
        moving={moment.playing || cameraMoving || draft !== null}
        drawRef={drawOverlay}
      >
        <Handles
          stops={stops}
          steered={steered}
          lifted={lifted}
          widthMm={job.blade.widthMm}
          reachMm={job.motion.fingerReachMm}
          loadPlaceMm={moment.loadPlaceMm}
          drawRef={drawHandles}
          onStopDraft={setDraft}
          onStop={({ side, turns }) => void changeTurns(side, turns)}
          onReachDraft={setReachDraftMm}
          onReach={(mm) => void changeMotion('fingerReachMm', mm)}
        />
      </Overlay>
      <StageCautions lifted={lifted} turning={draft !== null} reachDraftMm={reachDraftMm} />
    </NoPicture>
  )
}

interface StageCautionsProps {
  readonly lifted: boolean
  readonly turning: boolean
  readonly reachDraftMm: number | null
}

/** One line where it matters, there as long as it applies; nothing to dismiss. */
const StageCautions = ({ lifted, turning, reachDraftMm }: StageCautionsProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  return (
    <div className="stage-notes">
      {(lifted || turning) && (
        <p className="caution-line">
          <span aria-hidden="true">!</span>
          {t(lifted ? 'grind:caution.look' : 'grind:caution.stops')}
        </p>
      )}
      {reachDraftMm !== null && (
        <p className="draft-line">
          {t('grind:motion.reach')} {inWords(reachDraftMm, 'mm', 1)}
        </p>
      )}
    </div>
  )
}
