import { Canvas, useFrame, useThree } from '@react-three/fiber'
import { memo, useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { PCFShadowMap, Vector3 } from 'three'
import type { Job } from '../../geometry/job.ts'
import type { SetUp } from '../../geometry/setUp.ts'
import { radFromDeg } from '../../geometry/units.ts'
import { Later } from '../ui/Later.tsx'
import type { LiveGrind } from '../worker/liveGrind.ts'
import type { RunShape } from '../worker/protocol.ts'
import type { AnchorName } from './anchors.ts'
import { CAMERA_MS, Controls } from './Controls.tsx'
import { LENS_DEG, subjectOf } from './camera.ts'
import { disposeMaterials } from './disposal.ts'
import type { SetUpDraft } from './draft.ts'
import { ForFiles } from './ForFiles.tsx'
import { Lights } from './Lights.tsx'
import type { HiddenParts } from './layers.ts'
import { buildMachine, type Machine, type Stops } from './machine.ts'
import { createMaterials } from './materials.ts'
import { Picture } from './Picture.tsx'
import { Shaders } from './Shaders.tsx'
import { Sharpness } from './Sharpness.tsx'
import type { Rotation } from './wheel.ts'

/** How far blade and fixture turn over the bar to show the bevel. */
export const LIFT_RAD = radFromDeg(118)

/** Finds where a point of the machine, or a place on the edge (mm, + right), stands in the picture: CSS pixels from its upper left. */
export type Project = (name: AnchorName | number) => readonly [xPx: number, yPx: number]

export interface SceneViewProps {
  readonly job: Job
  readonly setUp: SetUp
  readonly shape: RunShape
  readonly live: LiveGrind
  readonly dot: 'left' | 'right'
  readonly rotation: Rotation
  readonly dark: boolean
  /** Lines on white, for paper. */
  readonly print: boolean
  /** The wheel runs in water. */
  readonly wet: boolean
  readonly hidden: HiddenParts
  readonly colours: { readonly touch: string; readonly ink: string }
  readonly stops: Stops
  /** A set-up being tried out by hand. */
  readonly draft: SetUpDraft | null
  readonly lifted: boolean
  readonly homeCount: number
  readonly reducedMotion: boolean
  /** Called with every picture, before it is drawn. */
  readonly onView: (project: Project) => void
  readonly onCameraMoving: (moving: boolean) => void
  readonly label: string
  /** Drawn by the processor alone: no shadow, so that it moves. */
  readonly software: boolean
  /** The grind plays, or camera or a handle is held: smooth comes before sharp. */
  readonly moving: boolean
  /** Told when the graphics are taken away, and when they are given back. */
  readonly onLost: (lost: boolean) => void
}

/** Most pixels drawn for one CSS pixel: beyond two the eye gains nothing and the graphics pay. */
const MOST_DPR = 2

/** The machine at work. Nothing is drawn while nothing changes. Smoothed edges cost the processor more than finer pictures. */
export const SceneView = memo((props: SceneViewProps) => {
  const { software, dark, print } = props
  const [share, setShare] = useState(1)
  const [ready, setReady] = useState(false)
  const onReady = useCallback(() => setReady(true), [])
  return (
    <Canvas
      frameloop={ready ? 'demand' : 'never'}
      dpr={share * Math.min(window.devicePixelRatio, MOST_DPR)}
      shadows={software || print ? false : { type: PCFShadowMap }}
      camera={{ fov: LENS_DEG, near: 20, far: 4000 }}
      gl={{ alpha: true, antialias: !software }}
      onCreated={({ gl }) => {
        gl.domElement.tabIndex = 0
        gl.domElement.setAttribute('aria-label', props.label)
        gl.domElement.setAttribute('role', 'application')
      }}
    >
      <Lights dark={dark} mirrored={!software && !print} />
      <Picture onLost={props.onLost} />
      <Later>
        <MachineView {...props} />
        {ready && (
          <Sharpness
            moving={props.moving}
            software={software}
            live={props.live}
            stops={props.stops}
            lifted={props.lifted}
            onShare={setShare}
          />
        )}
        <Shaders onReady={onReady} />
      </Later>
    </Canvas>
  )
})

const useMachine = (props: SceneViewProps): Machine => {
  const { job, setUp, shape, dot, rotation, dark, print, wet, software } = props
  const { touch, ink } = props.colours
  const { widthMm: bladeWidthMm } = job.blade
  const materials = useMemo(
    () => createMaterials({ touch, ink, dark, print, software, wet, bladeWidthMm }),
    [touch, ink, dark, print, software, wet, bladeWidthMm],
  )
  const machine = useMemo(
    () => buildMachine(job, setUp, shape, { rotation, dot, wet, print }, materials),
    [job, setUp, shape, rotation, dot, wet, print, materials],
  )
  useEffect(() => () => machine.dispose(), [machine])
  useEffect(() => () => disposeMaterials(materials), [materials])
  return machine
}

const MachineView = (props: SceneViewProps) => {
  const { job, setUp, live, lifted, reducedMotion, stops, draft, onView } = props
  const invalidate = useThree((state) => state.invalidate)
  const machine = useMachine(props)
  const liftRad = useLift(lifted, reducedMotion, invalidate)
  const wheelSeconds = useRef(0)
  const project = useProject(machine)
  const canvas = useThree((state) => state.gl.domElement)

  useEffect(() => live.subscribe('frame', () => invalidate()), [live, invalidate])
  useEffect(() => {
    machine.setStops(stops)
    machine.setDraft(draft)
    invalidate()
  }, [machine, stops, draft, invalidate])

  useEffect(() => {
    machine.hideParts(props.hidden)
    canvas.dataset.parts = machine.shownParts().join(' ')
    invalidate()
  }, [machine, canvas, props.hidden, invalidate])

  useFrame(({ camera }, deltaSeconds) => {
    const frame = live.latest
    if (frame && frame.run === props.shape.run) machine.show(frame, liftRad.current)
    if (frame?.playing && !reducedMotion) {
      wheelSeconds.current += Math.min(deltaSeconds, 0.1)
      machine.turnWheel(wheelSeconds.current)
    }
    camera.updateMatrixWorld()
    onView(project)
  })

  const subject = useMemo(() => {
    const arm = job.fixture.kind === 'steered' ? (job.fixture.guideArmMm ?? 0) : 0
    const half = Math.max(job.blade.widthMm, job.station.wheelWidthMm) / 2 + 20
    return subjectOf(machine.figures, arm, setUp.wheelRadiusMm, half, lifted)
  }, [machine, job, setUp, lifted])
  return (
    <>
      <primitive object={machine.root} />
      <ForFiles software={props.software} turnWheel={machine.turnWheel} />
      <Controls
        subject={subject}
        homeCount={props.homeCount}
        reducedMotion={reducedMotion}
        onMoving={props.onCameraMoving}
      />
    </>
  )
}

/** Where points stand in the picture now. Every point has a pair of its own, all places on the edge one together, filled anew: nothing is made a picture. */
const useProject = (machine: Machine): Project => {
  const get = useThree((state) => state.get)
  return useMemo(() => {
    const point = new Vector3()
    const places = new Map<AnchorName | 'onEdge', [number, number]>()
    return (name) => {
      const { camera, size } = get()
      machine.anchor(name, point).project(camera)
      const key = typeof name === 'number' ? 'onEdge' : name
      const place = places.get(key) ?? [0, 0]
      places.set(key, place)
      place[0] = ((1 + point.x) / 2) * size.width
      place[1] = ((1 - point.y) / 2) * size.height
      return place
    }
  }, [machine, get])
}

/** The lift on its way between down and up, as a value that frames read. */
const useLift = (lifted: boolean, reducedMotion: boolean, invalidate: () => void) => {
  const liftRad = useRef(0)
  useEffect(() => {
    const [from, to] = [liftRad.current, lifted ? LIFT_RAD : 0]
    const startMs = performance.now()
    let request = 0
    const move = (): void => {
      const share = reducedMotion ? 1 : Math.min((performance.now() - startMs) / CAMERA_MS, 1)
      liftRad.current = from + (to - from) * (1 - (1 - share) ** 3)
      invalidate()
      if (share < 1) request = requestAnimationFrame(move)
    }
    move()
    return () => cancelAnimationFrame(request)
  }, [lifted, reducedMotion, invalidate])
  return liftRad
}
