import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Counts, noCounts, playwrightCounts, sumOf, vitestCounts } from './support/counts.ts'
import { getChromium } from './support/getChromium.ts'
import { type Finished, finish } from './support/processes.ts'

/**
 * The test command: every gate in order, with the seconds it took and its failures in full. The last line counts every
 * test, and each gate as one more.
 */
const reports = mkdtempSync(join(tmpdir(), 'camberwright-tests-'))

interface Gate {
  readonly name: string
  run(): Finished
  /** Counts the single tests, once the gate has run. */
  readonly count?: () => Counts
}

const unitReport = join(reports, 'unit.json')
const runUnit = (): Finished =>
  finish('vitest', [
    ...['run', '--config', 'tests/vitest.config.ts', '--reporter=default', '--reporter=json'],
    `--outputFile.json=${unitReport}`,
  ])

const browserReport = join(reports, 'browser.json')
const runBrowser = (): Finished => {
  const browser = getChromium()
  if (!browser.ok) return browser
  return finish('playwright', ['test', '--config', 'tests/playwright.config.ts', '--reporter=list,json'], {
    PLAYWRIGHT_JSON_OUTPUT_FILE: browserReport,
  })
}

const gates: readonly Gate[] = [
  { name: 'types', run: () => finish('tsc', ['-b']) },
  { name: 'lint', run: () => finish('biome', ['check', '--config-path=tests', '.']) },
  { name: 'unused code', run: () => finish('knip', ['--no-progress']) },
  { name: 'unit', run: runUnit, count: () => vitestCounts(unitReport) },
  { name: 'build', run: () => finish('electron-vite', ['build', '--logLevel', 'warn']) },
  { name: 'browser', run: runBrowser, count: () => playwrightCounts(browserReport) },
]

/** A report that was never written has no tests; the gate itself has then failed. */
const countsOf = ({ count }: Gate): Counts => {
  try {
    return count?.() ?? noCounts
  } catch {
    return noCounts
  }
}

const told = ({ passed, failed, skippedNames }: Counts): string =>
  passed + failed + skippedNames.length === 0 ? '' : ` (${line({ passed, failed, skippedNames })})`

const line = ({ passed, failed, skippedNames }: Counts): string =>
  `${passed} passed, ${failed} failed${skippedNames.length > 0 ? `, ${skippedNames.length} skipped` : ''}`

const pass = (gate: Gate): Counts => {
  const startedMs = performance.now()
  const { ok, output } = gate.run()
  const counts = countsOf(gate)
  if (!ok) console.log(output)
  for (const name of counts.skippedNames) console.log(`skipped: ${name}`)
  console.log(
    `${gate.name}: ${ok ? 'passed' : 'FAILED'} in ${((performance.now() - startedMs) / 1000).toFixed(1)} s${told(counts)}`,
  )
  return sumOf([counts, { passed: ok ? 1 : 0, failed: ok ? 0 : 1, skippedNames: [] }])
}

const total = sumOf(gates.map(pass))
rmSync(reports, { recursive: true, force: true })
console.log(`\n${line(total)}`)
process.exitCode = total.failed === 0 ? 0 : 1
