import { say, sayProblem, useApp } from './store.ts'
import { call, transport } from './transport.ts'

/** Lets the browser keep a file that the host made. */
const download = (address: string, fileName: string): void => {
  const link = document.createElement('a')
  link.href = address
  link.download = fileName
  link.click()
}

/** Makes the page for the wheel and lets it be kept. */
export const makeCard = async (): Promise<void> => {
  const { job, report } = useApp.getState()
  if (!job || !report) return
  say('common:message.card.making')
  const made = await call('card.make', { id: job.id })
  if (!made.ok) return made.problems[0] && sayProblem(made.problems[0])
  download(transport.blobUrl(made.value.blobId), made.value.fileName)
  say('common:message.card.made', { fileName: made.value.fileName })
}
