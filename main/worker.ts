import { randomUUID } from 'node:crypto'
import { setImmediate } from 'node:timers/promises'
import { type MessagePort, parentPort, workerData } from 'node:worker_threads'
import { failed, type Result } from '../geometry/result.ts'
import { faultOf } from './database/fault.ts'
import { createMaker, type Maker } from './makerThread.ts'
import { photoFile } from './photos/photoServices.ts'
import { createReports } from './reports/reports.ts'
import { createRouter, type Router } from './router.ts'
import type { FromWorker, ToWorker, WorkerStart } from './serviceMessages.ts'
import { speakHere } from './settings/speakHere.ts'
import { createServices } from './workshop/allServices.ts'
import { type Blobs, createBlobs } from './workshop/blobs.ts'
import { readsThrough } from './workshop/readThrough.ts'
import { openWorkshop, type Workshop } from './workshop/workshop.ts'

/**
 * The service worker: the one thread that holds the data. Hosts start it through serviceClient.ts and only pass messages on,
 * so a window, a browser and the command line all meet the same services.
 */
const log = (line: string): void => void process.stderr.write(`${line}\n`)

/** Slow queries are for whoever works on the program, and told on request. */
const logSlow = process.env.CAMBERWRIGHT_LOG === undefined ? () => undefined : log

const logFault = (error: unknown): void => log(error instanceof Error ? (error.stack ?? error.message) : String(error))

interface Serving {
  readonly port: MessagePort
  readonly workshop: Workshop
  readonly router: Router
  readonly blobs: Blobs
  readonly maker: Maker
}

const answer = async ({ port, router, blobs, workshop, maker }: Serving, message: ToWorker): Promise<void> => {
  const post = (reply: FromWorker): void => port.postMessage(reply)
  if (message.type === 'cancel') router.cancel(message.callId)
  if (message.type === 'blob') {
    const { ticket, id } = message
    post({ type: 'blob', ticket, blob: blobs.get(id) ?? (await workshop.desk.access.read((db) => photoFile(db, id))) })
  }
  if (message.type === 'put') {
    const id = randomUUID()
    blobs.put(id, { bytes: message.bytes, fileName: '' }, 'application/octet-stream')
    post({ type: 'put', ticket: message.ticket, id })
  }
  if (message.type === 'call') {
    const { name, input, callId, ticket } = message
    let changesSettings = false
    const result = await router.handle(name, input, callId, (event) => {
      changesSettings ||= event.type === 'changed' && event.noun === 'settings'
      post({ type: 'event', event })
    })
    // Settings may hold another language, also after an undo.
    if (changesSettings) await workshop.desk.access.read(speakHere)
    post({ type: 'answer', ticket, result })
  }
  if (message.type === 'close') {
    await maker.close()
    // Whoever waited for the maker goes on now, and may have something to write first.
    await setImmediate()
    await workshop.close()
    port.close()
  }
}

const serve = (port: MessagePort, workshop: Workshop, { dataDir }: WorkerStart): void => {
  const blobs = createBlobs()
  const reports = createReports(dataDir, () => new Date())
  const onFault = (error: unknown): void => {
    logFault(error)
    reports.note({ part: 'service', error })
  }
  const maker = createMaker()
  const router = createRouter(createServices(workshop, { blobs, reports, ...maker }), {
    onFault,
    readsThrough: () => readsThrough(workshop.desk),
  })
  port.on('message', (message: ToWorker) => void answer({ port, workshop, router, blobs, maker }, message))
  port.postMessage({ type: 'ready' } satisfies FromWorker)
}

/** @returns the workshop, or why not, whatever went wrong */
const openOrExplain = async ({ dataDir, who }: WorkerStart): Promise<Result<Workshop>> => {
  try {
    return await openWorkshop({ dataDir, who, now: () => new Date(), newId: randomUUID, log: logSlow })
  } catch (error) {
    logFault(error)
    return failed(faultOf(error))
  }
}

const start = async (port: MessagePort, given: WorkerStart): Promise<void> => {
  const opened = await openOrExplain(given)
  if (opened.ok) return serve(port, opened.value, given)
  port.postMessage({ type: 'refused', problems: opened.problems } satisfies FromWorker)
  port.close()
}

if (parentPort !== null) await start(parentPort, workerData as WorkerStart)
