import { availableParallelism } from 'node:os'
import { defineConfig } from 'vitest/config'

/** Long enough for a loaded two-core machine: a time-out here means hung, never slow. */
const HUNG_MS = 120_000

// A workshop begins in the system's language; the tests read English wherever they run.
process.env.LC_ALL = 'en_GB.UTF-8'

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: HUNG_MS,
    hookTimeout: HUNG_MS,
    // Files share their modules, which is a third of the time: what a module holds, such as a window's store, each test sets for itself.
    isolate: false,
    // Left to itself the runner keeps a core free, which on two cores is half the machine.
    maxWorkers: availableParallelism(),
  },
})
