import { lazy, Suspense, useCallback, useMemo, useRef, useState } from 'react'
import { useApp } from '../app/store.ts'
import { NoPicture } from '../scene/NoPicture.tsx'
import type { Project } from '../scene/SceneView.tsx'
import type { Rotation } from '../scene/wheel.ts'
import { Later } from '../ui/Later.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { FlatHandles } from './handles/FlatHandles.tsx'
import { type DrawHandles, Handles } from './handles/Handles.tsx'
import { useDraft } from './handles/useDraft.ts'
import { type DrawOverlay, Overlay } from './Overlay.tsx'
import { PlainStage } from './PlainStage.tsx'
import { stageLabels } from './StageLabels.tsx'
import { stopsOf } from './stops.ts'
import type { Moment, Running } from './useLiveGrind.ts'
import { usePicture } from './usePicture.ts'
import { type Palette, useLookPalette, useReducedMotion } from './useScreen.ts'
import { useViewing } from './viewing.ts'
import { BackView } from './views/BackView.tsx'
import { type DrawPlace, ModelPlace } from './views/ModelPlace.tsx'
import { SectionView } from './views/SectionView.tsx'
import './stage.css'

const SceneView = lazy(async () => {
  const { SceneView } = await import('../scene/SceneView.tsx')
  const { makeTiles } = await import('../scene/tiles.ts')
  await makeTiles()
  return { default: SceneView }
})

interface StageProps {
  readonly running: Running
  readonly moment: Moment
  readonly palette: Palette
  readonly dot: 'left' | 'right'
  readonly rotation: Rotation
  readonly lifted: boolean
  readonly homeCount: number
  /** Default: as the station of the job in hand. */
  readonly cooling?: 'wet' | 'dry'
  /** Whether what is set can be typed into its label; default: yes. */
  readonly typed?: boolean
}

const DIMENSIONS = [
  ['barUnder', 'wheelTop'],
  ['projectionTop', 'projectionEdge'],
] as const

const NONE = [] as const

/** The moving model with what is written round it. */
export const Stage = (props: StageProps) => {
  const { running, moment, lifted } = props
  const t = useTexts()
  const figures = useFigures()
  const reducedMotion = useReducedMotion()
  const picture = usePicture()
  const look = useViewing((viewing) => viewing.look)
  const hidden = useViewing((viewing) => viewing.hidden)
  const palette = useLookPalette(look, props.palette)
  const stationCooling = useApp((app) => app.station?.cooling)
  const wet = (props.cooling ?? stationCooling) === 'wet'
  const { draft, setUpDraft, show, keep } = useDraft(running)
  const { job, setUp } = setUpDraft ?? running
  const [cameraMoving, setCameraMoving] = useState(false)
  const [inHand, setInHand] = useState(false)
  const drawOverlay = useRef<DrawOverlay>(() => undefined)
  const drawHandles = useRef<DrawHandles>(() => undefined)
  const drawPlace = useRef<DrawPlace>(() => undefined)
  const onView = useCallback((project: Project) => {
    drawOverlay.current(project)
    drawHandles.current(project)
    drawPlace.current(project)
  }, [])
  const stops = useMemo(() => stopsOf(job, setUp), [job, setUp])
  const moving = moment.playing || cameraMoving || draft !== null
  const none = picture.drawing === 'none'
  // Where handles stand as sliders, each has its field beside it.
  const typed = (props.typed ?? true) && !none && !picture.lost
  const labels = stageLabels({ ...props, typed, running: { ...running, job, setUp }, t, figures, stops })
  const caution = lifted ? 'grind:caution.look' : draft?.caution && cautions[draft.caution]
  const handles = { running, moment, lifted, draft, onDraft: show, onKeep: keep }
  const plain = (
    <PlainStage labels={labels} onAgain={none && picture.attempt === 0 ? null : picture.again}>
      <StageCaution name={caution} />
      <FlatDrawings running={running} moment={moment} lifted={lifted} dot={props.dot} />
      <FlatHandles {...handles} />
    </PlainStage>
  )
  if (none) return plain
  return (
    <NoPicture key={picture.attempt} instead={plain}>
      <Suspense fallback={null}>
        <Later>
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
            draft={setUpDraft}
            lifted={lifted}
            homeCount={props.homeCount}
            reducedMotion={reducedMotion}
            onView={onView}
            onCameraMoving={setCameraMoving}
            label={t('grind:scene.label')}
            moving={moving || inHand}
            software={picture.drawing === 'software'}
          />
        </Later>
        {picture.lost ? (
          plain
        ) : (
          <>
            <Overlay
              labels={hidden.labels ? NONE : labels}
              dimensions={lifted || hidden.labels ? NONE : DIMENSIONS}
              moving={moving}
              drawRef={drawOverlay}
            >
              <Handles {...handles} drawRef={drawHandles} onHold={setInHand} />
            </Overlay>
            <ModelPlace drawRef={drawPlace} />
            <div className="stage-notes" data-low={draft !== null}>
              <StageCaution name={caution} />
            </div>
          </>
        )}
      </Suspense>
    </NoPicture>
  )
}

/** Width of the drawings that stand for the picture where there is none (px). */
const FLAT_PX = 340

/** What can be drawn flat: the section along the wheel, and the plan of the back. */
const FlatDrawings = ({ dot, ...view }: Pick<StageProps, 'running' | 'moment' | 'lifted' | 'dot'>) => {
  const room = { plotPx: FLAT_PX, heightPx: null }
  return (
    <>
      <SectionView {...view} room={room} />
      <BackView {...view} room={room} dot={dot} />
    </>
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
