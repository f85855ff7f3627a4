import type { Job } from './job.ts'

/**
 * The wheel's face along its axis: how much each station stands above (+) or below the measured radius, straight between
 * stations. A wheel dressed to a cone or a crown, or worn by curved work, differs from a cylinder by this alone.
 */
export interface Rim {
  readonly radiusMm: number
  readonly halfWidthMm: number
  /** At equal steps from the left rim to the right one. */
  readonly heightMm: Float64Array
  readonly stepMm: number
  /** False: a true cylinder, whose heights need not be looked up. */
  readonly shaped: boolean
  /** Highest of the heights, at least 0. */
  readonly highestMm: number
}

/** Stations across a wheel: a crown of 0.02 mm is met within 3 nm between them. */
const STATIONS = 65

/** A wheel as dressed: cone falls to the right side, crown is the height of the middle above the rims. */
export const rimOf = ({ station, errors }: Job): Rim => {
  const halfWidthMm = station.wheelWidthMm / 2
  const stepMm = station.wheelWidthMm / (STATIONS - 1)
  const heightMm = Float64Array.from({ length: STATIONS }, (_, k) => {
    const share = (2 * k - (STATIONS - 1)) / (STATIONS - 1)
    return -errors.wheelConeMm * share - errors.wheelCrownMm * share * share
  })
  const shaped = station.grindingRatio !== null || errors.wheelConeMm !== 0 || errors.wheelCrownMm !== 0
  const highestMm = heightMm.reduce((a, b) => Math.max(a, b), 0)
  return { radiusMm: station.wheelDiameterMm / 2, halfWidthMm, heightMm, stepMm, shaped, highestMm }
}

/** Radius at a place along the axis; past the rims as at the rims. */
export const radiusAt = ({ radiusMm, halfWidthMm, heightMm, stepMm }: Rim, xMm: number): number => {
  const place = Math.min(Math.max((xMm + halfWidthMm) / stepMm, 0), STATIONS - 1)
  const k = Math.min(Math.floor(place), STATIONS - 2)
  const low = heightMm[k] as number
  return radiusMm + low + ((heightMm[k + 1] as number) - low) * (place - k)
}

/**
 * Takes wheel off where steel was taken: a volume over the whole circumference at one place along the axis, shared by the
 * two stations beside it.
 */
export const wearRim = ({ radiusMm, halfWidthMm, heightMm, stepMm }: Rim, xMm: number, volumeMm3: number): void => {
  const place = Math.min(Math.max((xMm + halfWidthMm) / stepMm, 0), STATIONS - 1)
  const k = Math.min(Math.floor(place), STATIONS - 2)
  const lossMm = volumeMm3 / (2 * Math.PI * radiusMm * stepMm)
  heightMm[k] = (heightMm[k] as number) - lossMm * (k + 1 - place)
  heightMm[k + 1] = (heightMm[k + 1] as number) - lossMm * (place - k)
}
