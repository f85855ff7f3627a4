/** How an attempt ended, where the ends are counted by name. */
export interface Outcome {
  readonly fault: string | null
  readonly end: string
}

/** One thing that is tried very often, each time from another seed. */
export interface LongCount {
  readonly name: string
  readonly count: number
  /** @returns what is wrong at this seed, or null */
  attempt(seed: number): string | null | Promise<string | null> | Promise<Outcome>
  /** Puts away what the attempts have shared. */
  end?(): Promise<void>
}
