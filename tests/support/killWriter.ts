import { randomUUID } from 'node:crypto'
import { createBlobs } from '../../main/workshop/blobs.ts'
import { openOwnBench, toolDraft } from '../main/support.ts'
import { seeded } from './seeded.ts'

/**
 * Writes to the rack in a folder without end, in every way a workshop does, and says each change once it is acknowledged:
 * a line of JSON with the change's id. Arguments: folder, seed.
 */
const [folder = '', seed = '1'] = process.argv.slice(2)
const blobs = createBlobs()
const bench = await openOwnBench(
  folder,
  { blobs },
  () => randomUUID(),
  () => new Date(),
)
const random = seeded(Number(seed))
const one = <T>(...of: readonly T[]): T => of[Math.floor(random() * of.length)] as T

const tools = async () => (await bench.done('tool.find', { limit: 50 })).tools
const some = async () => one(...(await tools()))

const TABLE = `name,kind,widthMm,thicknessMm,bevelSide,bevelAngleDeg,projectionMm,reliefMm,shavingDepthMm
one of a table,jack,50,3,down,25,120,0.1,0.05
another,jack,51,3,down,25,120,0.1,0.05
a third,jack,52,3,down,25,120,0.1,0.05`

type Written = { readonly changeId: number } | null

const ways: Readonly<Record<string, () => Promise<Written>>> = {
  add: () => bench.done('tool.add', { ...toolDraft, name: `tool ${random()}` }),
  edit: async () => {
    const { id, version } = await some()
    return bench.done('tool.edit', { id, version, draft: { ...toolDraft, name: `edited ${random()}` } })
  },
  remove: async () => {
    const { id, version } = await some()
    return bench.done('tool.remove', { id, version })
  },
  undo: async () => ({ changeId: (await bench.done('change.undo', {})).id }),
  hone: async () => {
    const { id } = await some()
    return bench.done('happening.add', {
      toolId: id,
      kind: one('honed', 'nicked'),
      at: new Date().toISOString(),
      note: 'n',
    })
  },
  lend: async () => {
    const free = (await tools()).filter(({ holder }) => holder === '').slice(0, 3)
    return bench.done('loan.lend', { toolIds: free.map(({ id }) => id), person: one('Wren', 'Osk') })
  },
  many: () => bench.done('tools.edit', { which: { search: 'tool', filter: {} }, set: { steel: `steel ${random()}` } }),
  bringIn: async () => {
    const blobId = randomUUID()
    blobs.put(blobId, { bytes: new TextEncoder().encode(TABLE), fileName: 'table.csv' }, 'text/csv')
    return bench.done('inOut.bring', { blobId, noun: 'tool' })
  },
  copy: async () => {
    await bench.done('copy.make', {})
    return null
  },
}

const FIRST = 6
for (let n = 0; n < FIRST; n += 1) await bench.done('tool.add', toolDraft)
process.stdout.write('{}\n')
const names = Object.keys(ways)
for (;;) {
  const way = one(...names, 'add', 'edit', 'hone')
  // What cannot be done just now, such as undoing where nothing stands, is no change; one of many that changed nothing has the id 0.
  const made = await (ways[way] as () => Promise<Written>)().catch(() => null)
  if (made !== null && made.changeId !== 0)
    process.stdout.write(`${JSON.stringify({ way, changeId: made.changeId })}\n`)
}
