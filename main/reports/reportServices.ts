import { ok } from '../../geometry/result.ts'
import type { PageFault } from '../contract/reports.ts'
import type { Services } from '../services.ts'
import type { Reports } from './reports.ts'

/** The page's error, as it was there. */
const errorOf = ({ name, message, stack }: PageFault): Error => Object.assign(new Error(message), { name, stack })

/** The calls about reports of faults: the page notes its own, shows all, and deletes. */
export const reportServices = (reports: Reports): Pick<Services, `report.${'list' | 'note' | 'remove'}`> => ({
  'report.list': async () => ok([...reports.list()]),
  'report.note': async (fault) => {
    reports.note({ part: 'page', error: errorOf(fault) })
    return ok(null)
  },
  'report.remove': async ({ name }) => {
    reports.remove(name)
    return ok(null)
  },
})
