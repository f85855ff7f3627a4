import { handOver } from './handOver.ts'
import { printDrawing } from './printDrawing.ts'
import { say, sayProblem, useApp } from './store.ts'
import { openJob } from './storeJob.ts'
import { call, transport } from './transport.ts'

/** A card of the tool in hand; from the rack, its job is opened first. @returns null where there is none: why not is said */
const made = async (form: 'pdf' | 'svg') => {
  if (!useApp.getState().tool) {
    say('common:cardNeedsTool')
    return null
  }
  if (!useApp.getState().job) await openJob()
  const { job, problems } = useApp.getState()
  if (job) say('common:message.card.making')
  const card = job ? await call('card.make', { id: job.id, form }) : { ok: false as const, problems }
  if (card.ok) return { address: transport.blobUrl(card.value.blobId), fileName: card.value.fileName }
  if (card.problems[0]) sayProblem(card.problems[0])
  return null
}

/** Makes the page for the wheel and lets it be kept. */
export const makeCard = async (): Promise<void> => {
  const card = await made('pdf')
  if (!card) return
  handOver(card, 'common:message.card.made')
}

/** Prints the page for the wheel. */
export const printCard = async (): Promise<void> => {
  const card = await made('svg')
  if (!card) return
  const response = await fetch(card.address).catch(() => null)
  if (!response?.ok) return say('problems:hostLost')
  await printDrawing(await response.text())
  say('common:message.card.printed')
}
