import { readFileSync } from 'node:fs'

/** How many tests ended how; `skippedNames` says which were not run. */
export interface Counts {
  readonly passed: number
  readonly failed: number
  readonly skippedNames: readonly string[]
}

export const noCounts: Counts = { passed: 0, failed: 0, skippedNames: [] }

export const sumOf = (all: readonly Counts[]): Counts => ({
  passed: all.reduce((sum, { passed }) => sum + passed, 0),
  failed: all.reduce((sum, { failed }) => sum + failed, 0),
  skippedNames: all.flatMap(({ skippedNames }) => skippedNames),
})

interface VitestReport {
  readonly testResults: readonly {
    readonly assertionResults: readonly { readonly fullName: string; readonly status: string }[]
  }[]
}

interface PlaywrightSuite {
  readonly title: string
  readonly suites?: readonly PlaywrightSuite[]
  readonly specs?: readonly { readonly title: string; readonly tests: readonly { readonly status: string }[] }[]
}

const countsOf = (ends: readonly { readonly name: string; readonly end: string }[], good: string): Counts => {
  const isSkipped = (end: string): boolean => ['skipped', 'pending', 'todo', 'disabled'].includes(end)
  return {
    passed: ends.filter(({ end }) => end === good).length,
    failed: ends.filter(({ end }) => end !== good && !isSkipped(end)).length,
    skippedNames: ends.filter(({ end }) => isSkipped(end)).map(({ name }) => name),
  }
}

const read = (path: string): unknown => JSON.parse(readFileSync(path, 'utf8'))

/** @param path where vitest's JSON reporter wrote @throws where it wrote nothing that can be read */
export const vitestCounts = (path: string): Counts => {
  const { testResults } = read(path) as VitestReport
  const tests = testResults.flatMap(({ assertionResults }) => assertionResults)
  return countsOf(
    tests.map(({ fullName, status }) => ({ name: fullName, end: status })),
    'passed',
  )
}

const endsIn = (suite: PlaywrightSuite, above: string): readonly { name: string; end: string }[] => {
  const name = above === '' ? suite.title : `${above} › ${suite.title}`
  const own = (suite.specs ?? []).flatMap(({ title, tests }) =>
    tests.map(({ status }) => ({ name: `${name} › ${title}`, end: status })),
  )
  return [...own, ...(suite.suites ?? []).flatMap((inner) => endsIn(inner, name))]
}

/** A test that passed only when tried again counts as failed. @param path where Playwright's JSON reporter wrote */
export const playwrightCounts = (path: string): Counts => {
  const { suites } = read(path) as { readonly suites: readonly PlaywrightSuite[] }
  return countsOf(
    suites.flatMap((suite) => endsIn(suite, '')),
    'expected',
  )
}
