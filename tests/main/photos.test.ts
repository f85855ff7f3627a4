import { afterEach, beforeEach, expect, it } from 'vitest'
import { photoFile } from '../../main/photos/photoServices.ts'
import { createBlobs } from '../../main/workshop/blobs.ts'
import { type Bench, codesOf, openOwnBench, temporaryFolder, toolDraft } from './support.ts'

let folder: ReturnType<typeof temporaryFolder>
let bench: Bench
const blobs = createBlobs()
beforeEach(async () => {
  folder = temporaryFolder()
  bench = await openOwnBench(folder.folder, { blobs })
})
afterEach(async () => {
  await bench.workshop.close()
  folder.remove()
})

const JPEG = Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3])
const BLOB = '00000000-0000-4000-8000-0000000000b1'
const hand = (bytes: Uint8Array) => blobs.put(BLOB, { bytes, fileName: '' }, 'application/octet-stream')
const fileOf = (id: string) => bench.workshop.desk.access.read((db) => photoFile(db, id))

const photographed = async () => {
  const { value: tool } = await bench.done('tool.add', toolDraft)
  const asked = { toolId: tool.id, blobId: BLOB, widthPx: 3, heightPx: 2 }
  return { tool, asked }
}

it('keeps a picture with its tool, to be fetched by its own id; taken away it is not, and it comes back', async () => {
  const { tool, asked } = await photographed()
  hand(JPEG)
  const { value: photo } = await bench.done('photo.add', { ...asked, caption: 'before' })
  expect(photo).toMatchObject({ mediaType: 'image/jpeg', widthPx: 3, caption: 'before' })
  expect(await fileOf(photo.id)).toMatchObject({ bytes: Buffer.from(JPEG), mediaType: 'image/jpeg' })
  await bench.done('photo.edit', { id: photo.id, version: 1, caption: 'as found' })
  await bench.done('photo.remove', { id: photo.id, version: 2 })
  expect([await bench.done('photo.list', { toolId: tool.id }), await fileOf(photo.id)]).toEqual([[], null])
  await bench.done('change.undo', {})
  expect(await bench.done('photo.list', { toolId: tool.id })).toMatchObject([{ caption: 'as found' }])
  expect((await fileOf(photo.id))?.bytes.length).toBe(JPEG.length)
})

it('takes nothing in that is no picture, too heavy, gone, or of a tool that does not stand', async () => {
  const { asked, tool } = await photographed()
  hand(new TextEncoder().encode('<svg onload="alert(1)"/>'))
  expect(codesOf(await bench.call('photo.add', asked))).toEqual(['photoNone'])
  const heavy = new Uint8Array(12 * 2 ** 20 + 1)
  heavy.set(JPEG)
  hand(heavy)
  expect(codesOf(await bench.call('photo.add', asked))).toEqual(['fileTooLarge'])
  const gone = { ...asked, blobId: '00000000-0000-4000-8000-0000000000b2' }
  expect(codesOf(await bench.call('photo.add', gone))).toEqual(['fileGone'])
  hand(JPEG)
  await bench.done('tool.remove', { id: tool.id, version: 1 })
  expect(codesOf(await bench.call('photo.add', asked))).toEqual(['noLongerThere'])
})
