import { join } from 'node:path'
import { createInterface } from 'node:readline'
import type { CallOutput } from '../../main/contract/calls.ts'
import { startLoopbackHost } from '../../main/serve.ts'
import { startServices } from '../../main/serviceClient.ts'
import { noteChoice } from '../../main/workshop/choice.ts'

/**
 * A host as `npm start` makes it, without the check of the build. For each line of its input it puts the demo workshop
 * back as it was and prints an address with a code; it ends when its input does.
 */
const [dataDir = ''] = process.argv.slice(2)
// The walk round the screens has a test of its own; the others begin without its line on the rack.
noteChoice(dataDir, { tourSeen: true })
const services = await startServices({ dataDir, who: 'test' })
const pageFolder = join(import.meta.dirname, '..', '..', 'out', 'renderer')
const host = await startLoopbackHost({ services, pageFolder, port: 0 })

/** What is known of learners stands outside the history: undoing leaves it. */
const forgetLearners = async (): Promise<void> => {
  const listed = await services.call('progress.list', {}, 'learners')
  if (!listed.ok) return
  const { progress, authorisations, setWork } = listed.value as CallOutput<'progress.list'>
  for (const { personId } of progress) await services.call('progress.forget', { personId }, 'forget')
  for (const { personId } of authorisations) await services.call('authorisation.take', { personId }, 'take')
  for (const { personId, lessonId } of setWork) await services.call('setWork.remove', { personId, lessonId }, 'remove')
}

/** Takes back, newest first, whatever was changed since the start. */
const putBack = async (): Promise<void> => {
  await services.call('workshop.open', { rack: 'demo' }, 'open')
  for (let undone = true; undone; ) undone = (await services.call('change.undo', {}, 'undo')).ok
  await forgetLearners()
}

for await (const _line of createInterface({ input: process.stdin })) {
  await putBack()
  process.stdout.write(`${host.newStartAddress()}\n`)
}
await host.close()
await services.close()
