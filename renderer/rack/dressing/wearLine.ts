import type { Dressing } from '../../../main/contract/work.ts'

interface Room {
  readonly width: number
  readonly height: number
  readonly edge: number
}

interface WearLine {
  /** Oldest first, in the drawing's units. */
  readonly points: readonly {
    readonly id: string
    readonly x: number
    readonly y: number
    readonly kind: Dressing['kind']
  }[]
  /** Height of the least wheel; null where it is not known or far below. */
  readonly leastY: number | null
}

/** Where the lines of a wheel's log lie in a drawing: time to the right, a larger wheel higher, the least wheel at the foot. */
export const wearLine = (
  dressings: readonly Dressing[],
  leastMm: number | null,
  { width, height, edge }: Room,
): WearLine => {
  const oldestFirst = [...dressings].sort((a, b) => a.at.localeCompare(b.at))
  const times = oldestFirst.map(({ at }) => Date.parse(at))
  const sizes = [...oldestFirst.map(({ diameterMm }) => diameterMm), ...(leastMm === null ? [] : [leastMm])]
  const along = (value: number, all: readonly number[], room: number): number => {
    const [low, high] = [Math.min(...all), Math.max(...all)]
    return high === low ? room / 2 : ((value - low) / (high - low)) * room
  }
  const yOf = (diameterMm: number): number => height - edge - along(diameterMm, sizes, height - 2 * edge)
  return {
    points: oldestFirst.map(({ id, kind, diameterMm }, i) => ({
      id,
      kind,
      x: edge + along(times[i] as number, times, width - 2 * edge),
      y: yOf(diameterMm),
    })),
    leastY: leastMm === null ? null : yOf(leastMm),
  }
}
