import { CapsuleGeometry, Group, Mesh } from 'three'
import type { SceneMaterials } from './materials.ts'

/** A thumb's width: no finger is put down nearer to the edge (mm). */
export const THUMB_MM = 25
const FINGER_RADIUS_MM = 8
const FINGER_LENGTH_MM = 42
/** Fingers stand up from the back by this (rad). */
const RISE_RAD = 0.5

/** Two fingertips on the back, plain, middle of the pair at x = 0: the load moves them across. In the blade frame. */
export const buildFingers = (materials: SceneMaterials): Group => {
  const fingers = new Group()
  for (const side of [-1, 1]) {
    const finger = new Mesh(new CapsuleGeometry(FINGER_RADIUS_MM, FINGER_LENGTH_MM, 6, 16), materials.finger)
    const half = FINGER_LENGTH_MM / 2
    finger.rotation.x = RISE_RAD
    finger.position.set(
      side * (FINGER_RADIUS_MM + 0.5),
      THUMB_MM + FINGER_RADIUS_MM + half * Math.cos(RISE_RAD),
      FINGER_RADIUS_MM - 0.6 + half * Math.sin(RISE_RAD),
    )
    finger.castShadow = true
    fingers.add(finger)
  }
  return fingers
}
