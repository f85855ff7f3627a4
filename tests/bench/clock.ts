/** How long each of several runs took (ms), the quickest first. */
const timesMs = (runs: number, run: () => void): readonly number[] =>
  Array.from({ length: runs }, () => {
    const startedMs = performance.now()
    run()
    return performance.now() - startedMs
  }).sort((a, b) => a - b)

/** Best of several runs: for comparing work with work, since these machines are noisy and noise only ever adds. */
export const bestMs = (runs: number, run: () => void): number => timesMs(runs, run)[0] as number

/** The middle one; of an even number the lower of two. */
export const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor((values.length - 1) / 2)] as number

/** Median of an odd number of runs: what a user waits for. */
export const medianMs = (runs: number, run: () => void): number => median(timesMs(runs, run))

/** One line of the table. */
export interface Row {
  readonly what: string
  readonly took: string
  readonly against: string
}

/** A time with the digits it deserves. */
export const inMs = (ms: number): string =>
  ms >= 1000 ? `${(ms / 1000).toFixed(1)} s` : `${ms.toPrecision(ms >= 100 ? 3 : 2)} ms`

/** A ratio or an error with two figures that matter; what is left of an error below a picometre is rounding. */
export const about = (value: number): string =>
  value < 1e-6 ? 'under 0.000001' : Number(value.toPrecision(2)).toLocaleString('en')
