import { download } from './download.ts'
import { say, sayProblem, useApp } from './store.ts'
import { openJob } from './storeJob.ts'
import { call, transport } from './transport.ts'

/** Makes the page for the wheel and lets it be kept; from the rack, the job of the tool in hand is opened first. */
export const makeCard = async (): Promise<void> => {
  if (!useApp.getState().tool) return say('common:cardNeedsTool')
  if (!useApp.getState().job) await openJob()
  const { job, problems } = useApp.getState()
  if (!job) return problems[0] && sayProblem(problems[0])
  say('common:message.card.making')
  const made = await call('card.make', { id: job.id })
  if (!made.ok) return made.problems[0] && sayProblem(made.problems[0])
  download(transport.blobUrl(made.value.blobId), made.value.fileName)
  say('common:message.card.made', { fileName: made.value.fileName })
}
