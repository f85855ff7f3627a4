import { expect, it } from 'vitest'
import { createBlobs, MOST_KEPT_BYTES } from '../../main/workshop/blobs.ts'

/** Weighs so much and takes no room. */
const weighing = (length: number) => ({ bytes: { length } as Uint8Array, fileName: '' })

it('made and handed-in files are kept as long as they are few and light, and the newest always', () => {
  const blobs = createBlobs()
  const there = (...ids: readonly string[]) => ids.filter((id) => blobs.get(id) !== null)
  for (let i = 0; i < 17; i += 1) blobs.put(`small ${i}`, weighing(1), '')
  expect(there('small 0', 'small 1', 'small 16')).toEqual(['small 1', 'small 16'])
  blobs.put('half', weighing(MOST_KEPT_BYTES / 2), '')
  blobs.put('most', weighing(MOST_KEPT_BYTES - 5), '')
  expect(there('small 16', 'half', 'most')).toEqual(['most'])
  blobs.put('too much', weighing(MOST_KEPT_BYTES + 1), '')
  expect(there('most', 'too much')).toEqual(['too much'])
})
