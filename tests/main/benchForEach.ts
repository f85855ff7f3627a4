import { afterEach, beforeEach } from 'vitest'
import { type Bench, openOwnBench, temporaryFolder } from './support.ts'

/** An empty rack of one's own before each test of a file, put away after it. @returns the bench of the test that runs */
export const benchForEach = (): (() => Bench) => {
  let place: ReturnType<typeof temporaryFolder>
  let bench: Bench
  beforeEach(async () => {
    place = temporaryFolder()
    bench = await openOwnBench(place.folder)
  })
  afterEach(async () => {
    await bench.workshop.close()
    place.remove()
  })
  return () => bench
}
