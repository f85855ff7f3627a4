/** Best of several runs (ms): these machines are noisy, and noise only ever adds. */
export const bestMs = (runs: number, run: () => void): number => {
  let best = Number.POSITIVE_INFINITY
  for (let k = 0; k < runs; k++) {
    const startedMs = performance.now()
    run()
    best = Math.min(best, performance.now() - startedMs)
  }
  return best
}

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
