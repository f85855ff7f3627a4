import { ok } from '../../geometry/result.ts'
import type { CallOutput } from '../contract/calls.ts'
import type { Services } from '../services.ts'

type Offered = CallOutput<'file.take'>[number]

/** Most files that wait for a window: as many as somebody would open with one double click. */
const MOST_WAITING = 12

/** Files that were opened with the program wait here until its window takes them: it may not be there yet, or be made anew. */
export const openedServices = (): Pick<Services, 'file.offer' | 'file.take'> => {
  let waiting: Offered[] = []
  return {
    'file.offer': async (file, context) => {
      waiting = [...waiting, file].slice(-MOST_WAITING)
      context.offered()
      return ok(null)
    },
    'file.take': async () => {
      const taken = waiting
      waiting = []
      return ok(taken)
    },
  }
}
