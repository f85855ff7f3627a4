import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Result } from '../../geometry/result.ts'
import type { CallName, CallOutput } from '../../main/contract/calls.ts'
import type { HostEvent } from '../../main/contract/events.ts'
import { type ServiceClient, startServices } from '../../main/serviceClient.ts'
import { codesOf, temporaryFolder, toolDraft } from './support.ts'

/** A worker starts in half a second and makes its first card in another; beside other tests each takes several. */
const WORKER_TIMEOUT_MS = 20_000

let place: ReturnType<typeof temporaryFolder>
let client: ServiceClient
beforeAll(async () => {
  place = temporaryFolder()
  client = await startServices({ dataDir: place.folder, who: 'tester' })
}, WORKER_TIMEOUT_MS)
afterAll(async () => {
  await client.close()
  place.remove()
})

const done = async <N extends CallName>(name: N, input: unknown): Promise<CallOutput<N>> => {
  const result = (await client.call(name, input, 'c')) as Result<CallOutput<N>>
  if (!result.ok) throw new Error(`${name}: ${JSON.stringify(result.problems)}`)
  return result.value
}

/** The tests share one worker, in this order: the last opens another rack and starts anew. */
describe('the service worker', { timeout: WORKER_TIMEOUT_MS }, () => {
  it('refuses what the contract does not name, and bad input, without dying', async () => {
    expect(codesOf(await client.call('rack.burn', {}, 'c'))).toEqual(['unknownCall'])
    expect(codesOf(await client.call('tool.add', { name: 3 }, 'c'))).toContain('wrongType')
    expect((await done('workshop.get', {})).rack).toBe('demo')
  })

  it('makes a card that can be fetched, and no other', async () => {
    const tools = (await done('tool.find', {})).tools
    const job = await done('job.open', { toolId: tools[5]?.id })
    const coarse = {
      ...job.document,
      grid: { across: 21, through: 5 },
      motion: { ...job.document.motion, sweeps: 5 },
    }
    await done('job.edit', { id: job.id, version: 1, document: coarse })
    const progress: number[] = []
    client.onEvent((event) => void (event.type === 'progress' && event.callId === 'c' && progress.push(event.done)))
    const card = await done('card.make', { id: job.id })
    const blob = await client.blob(card.blobId)
    expect(blob).toMatchObject({ fileName: card.fileName, mediaType: 'application/pdf' })
    expect(Buffer.from(blob?.bytes.subarray(0, 5) ?? []).toString()).toBe('%PDF-')
    expect(progress).toEqual([0, 1])
    expect(await client.blob(crypto.randomUUID())).toBeNull()
  })

  it('keeps the bytes of a file that is handed in', async () => {
    const id = await client.put(new Uint8Array([5, 6, 7]))
    expect([...((await client.blob(id ?? ''))?.bytes ?? [])]).toEqual([5, 6, 7])
  })

  it('keeps a second start out of the same folder, with a reason', async () => {
    const second = await startServices({ dataDir: place.folder, who: 'other' })
    expect(second.problems().map(({ code }) => code)).toEqual(['folderInUse'])
    expect(codesOf(await second.call('tool.find', {}, 'c'))).toEqual(['folderInUse'])
    expect(await second.blob('x')).toBeNull()
    await second.close()
    expect((await done('workshop.get', {})).rack).toBe('demo')
  })

  it('answers calls, tells of changes, keeps them, and gives the folder back', async () => {
    const events: HostEvent[] = []
    const stop = client.onEvent((event) => events.push(event))
    expect(client.problems()).toEqual([])
    await done('workshop.open', { rack: 'own' })
    events.length = 0
    const { value } = await done('tool.add', toolDraft)
    expect(events).toEqual([{ type: 'changed', noun: 'tool', ids: [value.id] }])
    stop()
    await client.close()
    client = await startServices({ dataDir: place.folder, who: 'tester' })
    expect((await done('tool.find', {})).tools).toMatchObject([value])
    expect(events).toHaveLength(1)
    expect(await done('change.list', {})).toMatchObject([{ who: 'tester', action: 'added' }])
  })
})
