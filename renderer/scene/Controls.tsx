import { useThree } from '@react-three/fiber'
import { useEffect } from 'react'
import { type PerspectiveCamera, Vector3 } from 'three'
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js'
import { aimCamera, type Subject } from './camera.ts'

/** A step of the arrow keys round the machine. */
const KEY_STEP_RAD = Math.PI / 36
/** How long the camera takes to a new subject, easing out. */
export const CAMERA_MS = 240

const easeOut = (share: number): number => 1 - (1 - share) ** 3

interface ControlsProps {
  readonly subject: Subject
  /** Counts up when the camera is asked back to its place. */
  readonly homeCount: number
  readonly reducedMotion: boolean
  /** Told when the camera starts and stops moving. */
  readonly onMoving: (moving: boolean) => void
}

/** Orbit by pointer, wheel and arrow keys; flies to the subject when that changes. */
export const Controls = ({ subject, homeCount, reducedMotion, onMoving }: ControlsProps) => {
  const camera = useThree((state) => state.camera) as PerspectiveCamera
  const canvas = useThree((state) => state.gl.domElement)
  const invalidate = useThree((state) => state.invalidate)
  const aspect = useThree((state) => state.size.width / Math.max(state.size.height, 1))
  const set = useThree((state) => state.set)
  const controls = useThree((state) => state.controls) as OrbitControls | null

  useEffect(() => {
    const fresh = new OrbitControls(camera, canvas)
    fresh.enableDamping = false
    fresh.minDistance = 60
    fresh.maxDistance = 2500
    fresh.addEventListener('change', () => invalidate())
    fresh.addEventListener('start', () => onMoving(true))
    fresh.addEventListener('end', () => onMoving(false))
    const key = (event: KeyboardEvent): void => turnByKey(event, camera, fresh)
    canvas.addEventListener('keydown', key)
    set({ controls: fresh })
    return () => {
      canvas.removeEventListener('keydown', key)
      fresh.dispose()
    }
  }, [camera, canvas, invalidate, onMoving, set])

  // biome-ignore lint/correctness/useExhaustiveDependencies: homeCount grows when the view is asked home again; the flight itself does not read it
  useEffect(() => {
    if (!controls) return
    return flyTo(camera, controls, subject, aspect, reducedMotion, invalidate)
  }, [camera, controls, subject, aspect, homeCount, reducedMotion, invalidate])
  return null
}

const turnByKey = (event: KeyboardEvent, camera: PerspectiveCamera, controls: OrbitControls): void => {
  const turn = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key]
  if (!turn) return
  event.preventDefault()
  const offset = camera.position.clone().sub(controls.target)
  const height = Math.asin(offset.y / offset.length()) + (turn[1] as number) * KEY_STEP_RAD
  const round = Math.atan2(offset.x, offset.z) + (turn[0] as number) * KEY_STEP_RAD
  const level = Math.cos(Math.min(Math.max(height, -1.5), 1.5)) * offset.length()
  offset.set(level * Math.sin(round), Math.sin(height) * offset.length(), level * Math.cos(round))
  camera.position.copy(controls.target).add(offset)
  controls.update()
}

/** @returns a function that breaks the flight off */
const flyTo = (
  camera: PerspectiveCamera,
  controls: OrbitControls,
  subject: Subject,
  aspect: number,
  reducedMotion: boolean,
  invalidate: () => void,
): (() => void) => {
  const [from, fromTarget] = [camera.position.clone(), controls.target.clone()]
  const there = camera.clone()
  const thereTarget = new Vector3()
  aimCamera(there, thereTarget, subject, aspect)
  const startMs = performance.now()
  let request = 0
  const fly = (): void => {
    const share = reducedMotion ? 1 : Math.min((performance.now() - startMs) / CAMERA_MS, 1)
    camera.position.lerpVectors(from, there.position, easeOut(share))
    controls.target.lerpVectors(fromTarget, thereTarget, easeOut(share))
    controls.update()
    invalidate()
    if (share < 1) request = requestAnimationFrame(fly)
  }
  fly()
  return () => cancelAnimationFrame(request)
}
