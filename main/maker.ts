import { parentPort } from 'node:worker_threads'
import { solveJob } from '../geometry/solveJob.ts'
import { speak } from './contract/texts.ts'
import type { SentTask } from './makerThread.ts'

/**
 * The maker: works jobs out and draws cards, templates and labels on a thread of its own, so that the service worker answers meanwhile. It
 * knows nothing but what it is given and touches no file.
 */
const make = async (task: SentTask): Promise<unknown> => {
  if (task.does === 'solve') return solveJob(task.job)
  await speak(task.language)
  if (task.does === 'template') return (await import('./template/makeTemplate.ts')).makeTemplate(...task.given)
  if (task.does === 'labels') return (await import('./labels/makeLabels.ts')).makeLabels(...task.given)
  if (task.does === 'worksheet') return (await import('./lessons/makeWorksheet.ts')).makeWorksheet(...task.given)
  if (task.does === 'daySheet') return (await import('./work/makeDaySheet.ts')).makeDaySheet(...task.given)
  if (task.does === 'cards') return (await import('./cards/makeCard.ts')).makeCards(...task.given)
  // Type and paper take half a second to load, which a report should not wait for.
  return (await import('./cards/makeCard.ts')).makeCard(...task.given)
}

const port = parentPort
port?.on('message', (task: SentTask) => void make(task).then((result) => port.postMessage(result)))
