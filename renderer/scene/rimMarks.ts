import { CylinderGeometry, Group, type Material, Mesh, type MeshBasicMaterial } from 'three'
import type { Job } from '../../geometry/job.ts'
import type { SceneMaterials } from './materials.ts'
import { CONTACT_ACROSS_MM, CONTACT_ALONG_MM } from './rimTextures.ts'

/** Marks lie this far off the rim (mm), more than its facets leave the circle. */
const OFF_RIM_MM = 0.12
/** Place in the order of drawing: after the wheel, before the blade. */
const BEFORE_BLADE = -8

/** Lift at which a blade no longer darkens the rim (rad). */
const GONE_AT_RAD = 0.12

/** What lies on the rim without turning with it: the blade's shadow, the water gathered at the edge, and the wet sheen. */
export interface RimPart {
  /** Follows the contact. */
  readonly shadow: Group
  /** Stays where the light is. */
  readonly sheen: Group
  /** @param angleRad of the edge round the axis, from towards the operator upwards @param liftRad lift of the blade */
  show(angleRad: number, traverseMm: number, liftRad: number): void
}

/** A piece of the rim's surface, from..to in angle from towards the operator upwards; its u runs from the upper end down. */
const patch = (radiusMm: number, widthMm: number, [from, to]: readonly [number, number], material: Material): Mesh => {
  const r = radiusMm + OFF_RIM_MM
  const geometry = new CylinderGeometry(r, r, widthMm, 40, 1, true, -to, to - from)
  geometry.rotateZ(-Math.PI / 2)
  return new Mesh(geometry, material)
}

/** Part of the rim that the sheen covers (rad): from below the edge over the top. */
const SHEEN_RAD = [-0.2, 1.9] as const

/** @param wet whether the wheel runs in water */
export const buildRimMarks = ({ station, blade }: Job, wet: boolean, m: SceneMaterials): RimPart => {
  const radiusMm = station.wheelDiameterMm / 2
  const reach = [-CONTACT_ALONG_MM.below / radiusMm, CONTACT_ALONG_MM.above / radiusMm] as const
  const [shadow, sheen] = [new Group(), new Group()]
  const contact: MeshBasicMaterial[] = wet ? [m.shade, m.meniscus] : [m.shade]
  for (const material of contact) shadow.add(patch(radiusMm, station.wheelWidthMm, reach, material))
  if (wet) sheen.add(patch(radiusMm, station.wheelWidthMm, SHEEN_RAD, m.sheen))
  for (const [order, mesh] of [...sheen.children, ...shadow.children].entries()) mesh.renderOrder = BEFORE_BLADE + order
  const acrossMm = blade.widthMm + 2 * CONTACT_ACROSS_MM
  const maps = contact.flatMap(({ map }) => map ?? [])
  for (const map of maps) map.repeat.y = station.wheelWidthMm / acrossMm
  return {
    shadow,
    sheen,
    show: (angleRad, traverseMm, liftRad) => {
      shadow.rotation.x = -angleRad
      const share = Math.max(1 - liftRad / GONE_AT_RAD, 0)
      for (const material of contact) {
        material.visible = share > 0
        material.opacity = share
      }
      for (const map of maps) map.offset.y = 0.5 - map.repeat.y / 2 - traverseMm / acrossMm
    },
  }
}
