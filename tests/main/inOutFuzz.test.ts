import { describe, expect, it } from 'vitest'
import { writeBundle } from '../../main/inOut/bundle.ts'
import { openFile } from '../../main/inOut/openFile.ts'
import { seeded } from '../support/seeded.ts'
import { documentOf } from './randomRack.ts'
import { toolDraft } from './support.ts'

const asked = { blobId: '', fileName: '', noun: null, delimiter: null, columns: null }
const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text)

const document = documentOf({ tool: [{ ...toolDraft, code: '01' }], purpose: [{ name: 'ash', note: '' }] })
const seeds: Readonly<Record<string, Uint8Array>> = {
  table: bytesOf('\ufeffcode,name,widthMm\r\n01,"a ""b""\r\nc",57\r\n02,\'=d,"58,5"\r\n'),
  document: bytesOf(document),
  bundle: writeBundle(document, new Map()),
}

/** A few bytes put in, taken out, changed or doubled. */
const spoiled = (bytes: Uint8Array, random: () => number): Uint8Array => {
  const list = [...bytes]
  const at = () => Math.floor(random() * list.length)
  for (let i = Math.ceil(random() * 4); i > 0; i -= 1) {
    const kind = Math.floor(random() * 4)
    if (kind === 0) list[at()] = Math.floor(random() * 256)
    if (kind === 1) list.splice(at(), 1 + Math.floor(random() * 8))
    if (kind === 2) list.splice(at(), 0, ...[0x22, 0x0d, 0x2c, 0xff, 0x00].slice(Math.floor(random() * 5)))
    if (kind === 3) list.splice(at(), 0, ...list.slice(at(), at() + 20))
  }
  return new Uint8Array(list)
}

const SPOILED = 500

describe.each(Object.entries(seeds))('a %s that was spoiled', (name, bytes) => {
  it(`is read or refused with a reason, ${SPOILED} times`, () => {
    const random = seeded(name.length)
    let refused = 0
    for (let i = 0; i < SPOILED; i += 1) {
      const opened = openFile(spoiled(bytes, random), asked, 'mm')
      if (!opened.ok) {
        refused += 1
        expect(opened.problems[0]?.code).toMatch(/^[a-zA-Z]+$/)
      }
    }
    expect(refused).toBeGreaterThan(SPOILED / 50)
  })
})
