import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** The test command: every gate in order, each counted, failures in full, and a plain closing line. */
const tally = { passed: 0, failed: 0 }

const run = (name: string, command: string, args: readonly string[]): boolean => {
  const started = performance.now()
  const { status } = spawnSync(command, args, { stdio: ['ignore', 'inherit', 'inherit'] })
  console.log(`${name}: ${status === 0 ? 'passed' : 'FAILED'} in ${((performance.now() - started) / 1000).toFixed(1)} s`)
  return status === 0
}

const gate = (name: string, command: string, args: readonly string[]): void => {
  if (run(name, command, args)) tally.passed++
  else tally.failed++
}

/** Unit tests count one by one, from vitest's own report. */
const unitTests = (): void => {
  const file = join(mkdtempSync(join(tmpdir(), 'camberwright-tests-')), 'unit.json')
  const passed = run('unit', 'vitest', ['run', '--config', 'tests/vitest.config.ts', '--reporter=default', '--reporter=json', `--outputFile.json=${file}`])
  const report = JSON.parse(readFileSync(file, 'utf8')) as { numPassedTests: number; numFailedTests: number }
  tally.passed += report.numPassedTests
  tally.failed += report.numFailedTests
  if (!passed && report.numFailedTests === 0) tally.failed++
}

gate('types', 'tsc', ['-b'])
unitTests()
console.log(`\n${tally.passed} passed, ${tally.failed} failed`)
process.exitCode = tally.failed === 0 ? 0 : 1
