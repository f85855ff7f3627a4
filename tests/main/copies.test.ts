import { copyFileSync, existsSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { ok } from '../../geometry/result.ts'
import { type Copy, copyPath, listCopies } from '../../main/backup/copies.ts'
import { bringBeside, finishGoingBack } from '../../main/backup/goBack.ts'
import { openReading } from '../../main/backup/openReading.ts'
import { copiesToDrop } from '../../main/backup/retention.ts'
import { type Bench, codesOf, openOwnBench, temporaryFolder, toolDraft, toolsOf } from './support.ts'

let place: ReturnType<typeof temporaryFolder>
let bench: Bench
beforeEach(async () => {
  place = temporaryFolder()
  bench = await openOwnBench(place.folder)
})
afterEach(async () => {
  await bench.workshop.close()
  place.remove()
})

const path = () => join(place.folder, 'own.db')
const names = async () => (await toolsOf(bench)).map(({ name }) => name)
const addTool = (name: string) => bench.done('tool.add', { ...toolDraft, name })
const sound = (file: string): unknown => {
  const opened = new BetterSqlite(file, { readonly: true })
  const answer = opened.pragma('integrity_check', { simple: true })
  opened.close()
  return answer
}

const copyAt = (at: string, bytes = 1, kind: Copy['kind'] = 'kept'): Copy => ({
  name: `${kind} ${at}`,
  kind,
  at,
  bytes,
})
const NOW = new Date('2027-06-15T12:00:00.000Z')
const hoursAgo = (hours: number): string => new Date(NOW.getTime() - hours * 3_600_000).toISOString()

describe('copies thin out', () => {
  it('hourly for a day, daily for two weeks, weekly for eight, then monthly', () => {
    const everyTenMinutes = Array.from({ length: 6 * 24 * 400 }, (_, k) => copyAt(hoursAgo(k / 6)))
    const dropped = new Set(copiesToDrop(everyTenMinutes, NOW, 1e9))
    const ages = everyTenMinutes
      .filter((copy) => !dropped.has(copy))
      .map(({ at }) => (NOW.getTime() - Date.parse(at)) / 3_600_000)
    const within = (from: number, to: number) => ages.filter((age) => age >= from && age < to).length
    expect(within(0, 24)).toBeGreaterThanOrEqual(24)
    expect(within(0, 24)).toBeLessThanOrEqual(25)
    expect(within(24, 14 * 24)).toBeLessThanOrEqual(14)
    expect(within(24, 14 * 24)).toBeGreaterThanOrEqual(13)
    expect(within(14 * 24, 56 * 24)).toBeLessThanOrEqual(7)
    expect(within(14 * 24, 56 * 24)).toBeGreaterThanOrEqual(6)
    expect(within(56 * 24, 400 * 24)).toBeLessThanOrEqual(13)
    expect(within(56 * 24, 400 * 24)).toBeGreaterThanOrEqual(11)
  })

  it('never to less than the newest two, never beyond the weight with the rest, whatever there is', () => {
    const copy = fc.record({
      at: fc.integer({ min: -100, max: 20_000 }).map(hoursAgo),
      bytes: fc.integer({ min: 1, max: 100 }),
      kind: fc.constantFrom<Copy['kind']>('kept', 'beforeUpdate', 'beforeGoingBack'),
    })
    fc.assert(
      fc.property(fc.array(copy.map(({ at, bytes, kind }) => copyAt(at, bytes, kind))), (copies) => {
        const dropped = new Set(copiesToDrop(copies, NOW, 250))
        const kept = copies.filter((each) => !dropped.has(each))
        const rest = [...kept].sort((a, b) => b.at.localeCompare(a.at)).slice(2)
        expect(kept.length).toBeGreaterThanOrEqual(Math.min(copies.length, 1))
        expect(rest.reduce((sum, { bytes }) => sum + bytes, 0)).toBeLessThanOrEqual(250)
      }),
    )
  })

  it('and copies of a day to come never push out those of today', () => {
    const future = Array.from({ length: 10 }, (_, k) => copyAt(hoursAgo(-40_000 - 800 * k), 100))
    const today = [copyAt(hoursAgo(0), 100), copyAt(hoursAgo(2), 100)]
    const dropped = copiesToDrop([...future, ...today], NOW, 300)
    expect(today.filter((copy) => dropped.includes(copy))).toEqual([])
    expect(dropped.length).toBeGreaterThan(5)
  })

  it('and those made before something are the last five of each kind', () => {
    const copies = Array.from({ length: 9 }, (_, k) => copyAt(hoursAgo(k), 1, 'beforeGoingBack'))
    expect(copiesToDrop(copies, NOW, 1e9)).toEqual(copies.slice(5))
  })
})

describe('a copy is made unasked', () => {
  it('with the first change after an hour, and holds that change', async () => {
    await bench.workshop.close()
    let now = Date.parse('2027-01-01T08:00:00Z')
    bench = await openOwnBench(place.folder, {}, undefined, () => new Date(now))
    const before = listCopies(path()).length
    await addTool('in the same hour')
    expect(listCopies(path())).toHaveLength(before)
    now += 3_600_000
    await addTool('an hour later')
    expect(listCopies(path())).toHaveLength(before + 1)
    const [newest] = listCopies(path())
    expect(await bench.done('copy.look', { name: newest?.name ?? '' })).toMatchObject({ tools: 2 })
    // The clock is set back by a day: copies go on.
    now -= 24 * 3_600_000
    await addTool('yesterday')
    expect(listCopies(path())).toHaveLength(before + 2)
  })

  it('as long as all of them weigh no more than is set, which the file itself knows', async () => {
    await bench.workshop.close()
    let now = Date.parse('2027-01-01T08:00:00Z')
    bench = await openOwnBench(place.folder, {}, undefined, () => new Date(now))
    await bench.workshop.desk.access.write(async (db) => {
      await db
        .insertInto('photoBytes')
        .values({ hash: 'large', bytes: Buffer.alloc(6e6, 1) })
        .execute()
      return ok(null)
    })
    const later = async () => {
      now += 3_600_000
      await bench.done('copy.make', {})
      return (await bench.done('copy.list', {})).copies.filter(({ bytes }) => bytes > 6e6).length
    }
    for (const many of [1, 2, 3, 4]) expect(await later()).toBe(many)
    await bench.done('settings.edit', { copiesMostMb: 10 })
    expect(await later()).toBe(2)
  })

  it('and what bears another name is none', async () => {
    for (const name of [
      'own-.db',
      'own-2026-13-45.db',
      'other-2026-01-05.db',
      'own-2026-01-05.db.unfinished',
      'notes.txt',
    ])
      writeFileSync(join(place.folder, 'backups', name), '')
    copyFileSync(copyOfNow().from, join(place.folder, 'backups', 'own-2025-01-05.db'))
    const listed = (await bench.done('copy.list', {})).copies.map(({ name }) => name)
    expect(listed).toContain('own-2025-01-05.db')
    expect(listed.some((name) => name.includes('13-45') || name.includes('other') || name.includes('unfinished'))).toBe(
      false,
    )
  })
})

const copyOfNow = () => {
  const [newest] = listCopies(path())
  return { from: join(place.folder, 'backups', newest?.name ?? '') }
}

describe('going back', () => {
  it('brings the rack back as it was, and the way back again', async () => {
    await addTool('kept')
    await bench.done('copy.make', {})
    const [copy] = (await bench.done('copy.list', {})).copies
    await addTool('too much')
    const { at } = await bench.done('copy.restore', { name: copy?.name ?? '' })
    expect(at).toBe(copy?.at)
    expect(await names()).toEqual(['kept'])
    const before = (await bench.done('copy.list', {})).copies.find(({ kind }) => kind === 'beforeGoingBack')
    await addTool('after it')
    await bench.done('copy.restore', { name: before?.name ?? '' })
    expect((await names()).sort()).toEqual(['kept', 'too much'])
    expect(sound(path())).toBe('ok')
  })

  it('refuses a damaged copy, one of another program, a newer one, and a name that leads elsewhere', async () => {
    await addTool('kept')
    await bench.done('copy.make', {})
    const { from } = copyOfNow()
    const bytes = readFileSync(from)
    writeFileSync(from, Buffer.concat([bytes.subarray(0, 4096), Buffer.alloc(4096, 7), bytes.subarray(8192)]))
    const name = from.split('/').at(-1) ?? ''
    expect(codesOf(await bench.call('copy.restore', { name }))).toEqual(['copyDamaged'])
    rmSync(from)
    const other = new BetterSqlite(from)
    other.exec('CREATE TABLE note (text TEXT)')
    other.close()
    expect(codesOf(await bench.call('copy.restore', { name }))).toEqual(['notARack'])
    writeFileSync(from, bytes)
    const newer = new BetterSqlite(from)
    newer.pragma('user_version = 999')
    newer.close()
    expect(codesOf(await bench.call('copy.restore', { name }))).toEqual(['rackTooNew'])
    for (const elsewhere of ['../own.db', '/etc/passwd', 'own.db', `./${name}`])
      expect(codesOf(await bench.call('copy.restore', { name: elsewhere }))).toEqual(['noSuchCopy'])
    expect(await names()).toEqual(['kept'])
  })

  it('cut short by a stop is ended at the next start: undone before the old file is aside, done after', async () => {
    await addTool('kept')
    await bench.done('copy.make', {})
    const { from } = copyOfNow()
    await addTool('later')
    await bench.workshop.close()
    bringBeside(path(), from)
    bench = await openOwnBench(place.folder)
    expect((await names()).sort()).toEqual(['kept', 'later'])
    expect(existsSync(`${path()}.comingBack`)).toBe(false)
    await bench.workshop.close()
    bringBeside(path(), from)
    renameSync(path(), copyPath(path(), 'beforeGoingBack', NOW))
    bench = await openOwnBench(place.folder)
    expect(await names()).toEqual(['kept'])
    expect(readdirSync(place.folder).filter((name) => name.endsWith('.comingBack'))).toEqual([])
    finishGoingBack(path())
    expect(await names()).toEqual(['kept'])
  })
  it('from a damaged file that was put aside has the copies of before to choose from', async () => {
    await addTool('kept')
    await bench.done('copy.make', {})
    await bench.workshop.close()
    // All but the head of the file, by which it is still known for ours.
    const bytes = readFileSync(path())
    bytes.fill(0x5a, 100)
    writeFileSync(path(), bytes)
    bench = await openOwnBench(place.folder)
    const { notices } = await bench.done('workshop.get', {})
    expect([notices?.map(({ code }) => code), await names()]).toEqual([['rackMovedAside'], []])
    const { copies } = await bench.done('copy.list', {})
    const contents = await Promise.all(copies.map(({ name }) => bench.done('copy.look', { name })))
    const good = copies[contents.findIndex(({ tools }) => tools === 1)]
    await bench.done('copy.restore', { name: good?.name ?? '' })
    expect(await names()).toEqual(['kept'])
  })
})

it('a view planted in a data file cannot have anything loaded while it is looked into', () => {
  const planted = join(place.folder, 'planted.db')
  const file = new BetterSqlite(planted)
  file.exec("CREATE VIEW tool AS SELECT load_extension('evil') AS id")
  file.close()
  const reading = openReading(planted)
  expect(() => reading.prepare('SELECT * FROM tool').all()).toThrow(
    /unsafe use of load_extension|not authorized|no such function/,
  )
  expect(reading.pragma('trusted_schema', { simple: true })).toBe(0)
  reading.close()
})
