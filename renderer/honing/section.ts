import { radFromDeg } from '../../geometry/units.ts'
import { type Hollowed, type HonedBevel, heelOf } from './bevel.ts'

/** A point of the section (mm): v along the back from the edge that was, n up from the back. */
export type SectionPoint = readonly [v: number, n: number]

type Flat = readonly [SectionPoint, SectionPoint]

/** The bevel in section, before and after one honing. */
export interface Section {
  /** From the edge that is to the upper face. */
  readonly bevel: readonly SectionPoint[]
  /** The bevel as it was ground, edge to heel. */
  readonly ground: readonly SectionPoint[]
  /** Where the stone was, the flat at the edge first; none: it does not reach the edge. */
  readonly flats: readonly Flat[]
  readonly heelMm: number
}

const POINTS = 40

/** @returns the section. @param setBackMm of the edge */
export const sectionOf = (hollowed: Hollowed, honedDeg: number, setBackMm: number, honed: HonedBevel): Section => {
  const { thicknessMm } = hollowed.job.blade
  const heelMm = heelOf(hollowed)
  const rim = rimOf(hollowed)
  const hollow = (from: number, to: number) =>
    Array.from({ length: POINTS + 1 }, (_, k) => from + ((to - from) * k) / POINTS).map((n) => rim(n))
  const ground = hollow(0, thicknessMm)
  if (honed.kind === 'onHeel') return { bevel: ground, ground, flats: [], heelMm }
  const honedRad = radFromDeg(honedDeg)
  const onStone = (n: number): SectionPoint => [setBackMm + n / Math.tan(honedRad), n]
  const topMm = honed.kind === 'whole' ? thicknessMm : honed.widthMm * Math.sin(honedRad)
  const flat: Flat = [onStone(0), onStone(topMm)]
  if (honed.kind === 'whole') return { bevel: flat, ground, flats: [flat], heelMm }
  if (honed.kind === 'flat') return { bevel: [...flat, ...hollow(topMm, thicknessMm)], ground, flats: [flat], heelMm }
  const againMm = levelAgain(hollowed, setBackMm, honed.widthMm) * Math.sin(honedRad)
  const atHeel: Flat = [onStone(againMm), onStone(thicknessMm)]
  return { bevel: [...flat, ...hollow(topMm, againMm), ...atHeel], ground, flats: [flat, atHeel], heelMm }
}

/** The wheel's rim at a height. */
const rimOf = ({ setUp, job }: Hollowed) => {
  const radius = job.station.wheelDiameterMm / 2
  const bevelRad = radFromDeg(setUp.bevelAngleDeg)
  return (n: number): SectionPoint => {
    const across = n - radius * Math.cos(bevelRad)
    return [Math.sqrt(radius * radius - across * across) - radius * Math.sin(bevelRad), n]
  }
}

/** Where the stone meets steel again at the heel, along the stone: the product of the roots is x^2 + 2 x R sin b. */
const levelAgain = ({ setUp, job }: Hollowed, setBackMm: number, widthMm: number): number =>
  (setBackMm * setBackMm + setBackMm * job.station.wheelDiameterMm * Math.sin(radFromDeg(setUp.bevelAngleDeg))) /
  widthMm
