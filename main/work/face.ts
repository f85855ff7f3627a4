import type { Face } from '../contract/day.ts'
import type { ToolLine } from '../contract/entities.ts'

/** Kinds that are ground to a short radius. */
const roughingKinds: readonly ToolLine['kind'][] = ['scrub', 'fore']
/** Relief (mm) from which an iron is for coarse work: that of a jack's iron ground to a radius of 300 mm. */
const ROUGHING_RELIEF_MM = 0.6

type Shaped = Pick<ToolLine, 'kind' | 'reliefMm' | 'harmed' | 'condition'>

/** @returns what an iron is to the wheel's face: a nick to be ground out wears it as a roughing iron does */
export const faceOf = ({ kind, reliefMm, harmed, condition }: Shaped): Face => {
  const shaping = harmed === 'yes' || condition === 'damaged'
  if (shaping || roughingKinds.includes(kind) || reliefMm >= ROUGHING_RELIEF_MM) return 'rough'
  return reliefMm === 0 ? 'straight' : 'curved'
}
