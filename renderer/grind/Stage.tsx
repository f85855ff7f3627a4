import { lazy, Suspense, useCallback, useMemo, useRef, useState } from 'react'
import { drawingOf, NoPicture } from '../scene/NoPicture.tsx'
import type { Project } from '../scene/SceneView.tsx'
import type { Rotation } from '../scene/wheel.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { type DrawHandles, Handles } from './handles/Handles.tsx'
import { useDraft } from './handles/useDraft.ts'
import { type DrawOverlay, Overlay } from './Overlay.tsx'
import type { LabelSpec } from './placeLabels.ts'
import { stageLabels } from './StageLabels.tsx'
import { stopsOf } from './stops.ts'
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
  const t = useTexts()
  const figures = useFigures()
  const reducedMotion = useReducedMotion()
  const drawing = useMemo(drawingOf, [])
  const { draft, setUpDraft, show, keep } = useDraft(running)
  const { job, setUp } = setUpDraft ?? running
  const [cameraMoving, setCameraMoving] = useState(false)
  const drawOverlay = useRef<DrawOverlay>(() => undefined)
  const drawHandles = useRef<DrawHandles>(() => undefined)
  const drawPlace = useRef<DrawPlace>(() => undefined)
  const onView = useCallback((project: Project) => {
    drawOverlay.current(project)
    drawHandles.current(project)
    drawPlace.current(project)
  }, [])
  const stops = useMemo(() => stopsOf(job, setUp), [job, setUp])
  const labels = stageLabels({ ...props, running: { ...running, job, setUp }, t, figures, stops })
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
          draft={setUpDraft}
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
          running={running}
          moment={moment}
          lifted={lifted}
          draft={draft}
          drawRef={drawHandles}
          onDraft={show}
          onKeep={keep}
        />
      </Overlay>
      <ModelPlace drawRef={drawPlace} />
      <div className="stage-notes" data-low={draft !== null}>
        <StageCaution name={lifted ? 'grind:caution.look' : draft?.caution && cautions[draft.caution]} />
      </div>
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

const cautions = { stops: 'grind:caution.stops', setUp: 'handles:caution.setUp' } as const

/** One line where it matters, there as long as it applies; nothing to dismiss. */
const StageCaution = ({ name }: { readonly name: string | null | undefined }) => {
  const t = useTexts()
  return name ? (
    <p className="caution-line">
      <span aria-hidden="true">!</span>
      {t(name)}
    </p>
  ) : null
}
