import { lazy, Suspense, useCallback, useMemo, useRef, useState } from 'react'
import { drawingOf, NoPicture } from '../scene/NoPicture.tsx'
import type { Project } from '../scene/SceneView.tsx'
import type { Rotation } from '../scene/wheel.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { changeMotion, changeTurns } from './editMotion.ts'
import { type DrawHandles, Handles } from './Handles.tsx'
import { type DrawOverlay, Overlay } from './Overlay.tsx'
import type { LabelSpec } from './placeLabels.ts'
import { stageLabels } from './StageLabels.tsx'
import { type StopDraft, stopsOf } from './stops.ts'
import type { Moment, Running } from './useLiveGrind.ts'
import { type Palette, useReducedMotion } from './useScreen.ts'
import { type DrawPlace, ModelPlace } from './views/ModelPlace.tsx'
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

/** The moving model with what is written round it. */
export const Stage = (props: StageProps) => {
  const { running, moment, palette, lifted } = props
  const { job, setUp } = running
  const t = useTexts()
  const figures = useFigures()
  const reducedMotion = useReducedMotion()
  const drawing = useMemo(drawingOf, [])
  const [draft, setDraft] = useState<StopDraft | null>(null)
  const [reachDraftMm, setReachDraftMm] = useState<number | null>(null)
  const [cameraMoving, setCameraMoving] = useState(false)
  const drawOverlay = useRef<DrawOverlay>(() => undefined)
  const drawHandles = useRef<DrawHandles>(() => undefined)
  const drawPlace = useRef<DrawPlace>(() => undefined)
  const onView = useCallback((project: Project) => {
    drawOverlay.current(project)
    drawHandles.current(project)
    drawPlace.current(project)
  }, [])
  const stops = useMemo(() => stopsOf(job, setUp, draft), [job, setUp, draft])
  const labels = stageLabels({ ...props, t, figures, stops })
  const steered = job.fixture.kind === 'steered' && job.fixture.guideArmMm !== null
  const plain = <PlainStage labels={labels} />
  if (drawing === 'none') return plain
  return (
    <NoPicture instead={plain}>
      <Suspense fallback={null}>
        <SceneView
          {...running}
          dot={props.dot}
          rotation={props.rotation}
          dark={palette.dark}
          colours={palette}
          stops={stops}
          lifted={lifted}
          homeCount={props.homeCount}
          reducedMotion={reducedMotion}
          onView={onView}
          onCameraMoving={setCameraMoving}
          label={t('grind:scene.label')}
          moving={moment.playing || cameraMoving}
          software={drawing === 'software'}
        />
      </Suspense>
      <Overlay
        labels={labels}
        dimensions={lifted ? [] : DIMENSIONS}
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
      <ModelPlace drawRef={drawPlace} />
      <StageCautions lifted={lifted} turning={draft !== null} reachDraftMm={reachDraftMm} />
    </NoPicture>
  )
}

/** Where there is no picture: why, and the same figures and fields in a row. */
const PlainStage = ({ labels }: { readonly labels: readonly LabelSpec[] }) => {
  const t = useTexts()
  return (
    <div className="plain-stage">
      <p role="status">{t('grind:scene.noPicture')}</p>
      <div className="plain-labels">
        {labels.map(({ id, content }) => (
          <div key={id}>{content}</div>
        ))}
      </div>
    </div>
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
