import { mkdirSync, mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { kindOfFile } from '../../main/contract/fileKinds.ts'
import { MOST_FILE_BYTES } from '../../main/contract/transport.ts'
import { filesNamed, offerFile } from '../../main/opened/offerFile.ts'
import { openedServices } from '../../main/opened/openedServices.ts'
import type { ServiceClient } from '../../main/serviceClient.ts'
import { keepRecent, readRecent, withRecent } from '../../main/window/recentFiles.ts'
import { codesOf } from './support.ts'

const folder = mkdtempSync(join(tmpdir(), 'camberwright-opened-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const write = (name: string, text: string): string => {
  writeFileSync(join(folder, name), text)
  return join(folder, name)
}

it.each([
  ['06 Jack.cwjob', 'job'],
  ['06 Jack.JOB.json', 'job'],
  ['job.json', 'job'],
  ['myjob.json', 'rack'],
  ['roof.cwlesson', 'lesson'],
  ['roof.lesson.json', 'lesson'],
  ['rack.cwrack', 'rack'],
  ['rack.zip', 'rack'],
  ['irons.csv', 'rack'],
  ['notes.txt', null],
  ['cwjob', 'job'],
  ['acwjob', null],
  ['', null],
])('a file called %s is of the kind %s', (name, kind) => expect(kindOfFile(name)).toBe(kind))

it('finds the files on a command line among the rest', () => {
  expect(filesNamed(['.', '--data=/x', '--type=a.cwjob', 'a.cwjob', '/b/c.csv', 'notes.txt'], '/here')).toEqual([
    '/here/a.cwjob',
    '/b/c.csv',
  ])
})

describe('a file offered to the window', () => {
  const offers: unknown[] = []
  const services = {
    put: async (bytes: Uint8Array) => `blob of ${bytes.length}`,
    call: async (...args: unknown[]) => {
      offers.push(args.slice(0, 2))
      return { ok: true, value: null }
    },
  } as unknown as ServiceClient

  it('is read here and named without its folder', async () => {
    expect(await offerFile(services, write('a.cwjob', 'steel'))).toMatchObject({ ok: true })
    expect(offers).toEqual([['file.offer', { blobId: 'blob of 5', fileName: 'a.cwjob' }]])
  })

  it('is refused where it is gone, a folder or too large', async () => {
    mkdirSync(join(folder, 'folder.zip'))
    const large = write('large.zip', '')
    truncateSync(large, MOST_FILE_BYTES + 1)
    expect(codesOf(await offerFile(services, join(folder, 'gone.zip')))).toEqual(['unreadable'])
    expect(codesOf(await offerFile(services, join(folder, 'folder.zip')))).toEqual(['unreadable'])
    expect(codesOf(await offerFile(services, large))).toEqual(['fileTooLarge'])
  })

  it('waits until it is taken, once', async () => {
    const { 'file.offer': offer, 'file.take': take } = openedServices()
    let told = 0
    const context = { offered: () => (told += 1) } as never
    for (let i = 1; i <= 13; i += 1) await offer({ blobId: 'b', fileName: `${i}` }, context)
    expect(told).toBe(13)
    const taken = await take({}, context)
    // The oldest goes when more wait than anybody opens at once.
    expect(taken.ok && taken.value.map(({ fileName }) => fileName)).toEqual(
      Array.from({ length: 12 }, (_, i) => `${i + 2}`),
    )
    expect(await take({}, context)).toEqual({ ok: true, value: [] })
  })
})

it('what was opened lately is kept, ten of it, and nothing else is taken for it', () => {
  const place = join(folder, 'lists', 'recent.json')
  expect(readRecent(place)).toEqual([])
  const paths = Array.from({ length: 12 }, (_, i) => `/irons/${i}`)
  keepRecent(place, paths.reduce<readonly string[]>(withRecent, []))
  expect(readRecent(place)).toEqual(paths.slice(2).reverse())
  expect(withRecent(['/a', '/b'], '/b')).toEqual(['/b', '/a'])
  for (const text of ['', '{', '{}', '[1]', '[""]']) {
    writeFileSync(place, text)
    expect(readRecent(place)).toEqual([])
  }
})
