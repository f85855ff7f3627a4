import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { homedir, userInfo } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { createReports } from '../../main/reports/reports.ts'
import { reportText } from '../../main/reports/reportText.ts'
import { countedRestarts } from '../../main/window/restarts.ts'
import { openOwnBench, temporaryFolder, tickingClock } from './support.ts'

const AT = new Date('2026-01-05T08:07:06.005Z')
const textOf = (error: unknown): string => reportText({ part: 'service', error }, AT)
const errorOf = (name: string, message: string, more: object = {}): Error =>
  Object.assign(new Error(message), { name, stack: '', ...more })

describe('a report', () => {
  it('tells version, time, part, kind of error, where in the program, and the machine', () => {
    const stack = [
      'TypeError: x is not a function',
      '    at Object.handle (file:///home/ada/irons/out/main/worker.js:12:34)',
      '    at async camberwright://app/assets/index-Dk3.js:1:99',
      '    at C:\\Users\\Ada\\camber\\main\\router.ts:5:6',
      '    at open (/home/ada/Irons of Ada.csv:1:1)',
    ].join('\n')
    const [head, part, kind, ...rest] = textOf(errorOf('TypeError', 'x is not a function', { stack })).split('\n')
    expect(head).toMatch(/^Camberwright \d+\.\d+\.\d+, 2026-01-05 08:07 UTC$/)
    expect([part, kind]).toEqual(['part: service', 'TypeError: x is not a function'])
    expect(rest.slice(0, 3)).toEqual([
      '  at Object.handle worker.js:12:34',
      '  at async index-Dk3.js:1:99'.replace('async ', ''),
      '  at router.ts:5:6',
    ])
    expect(rest[3]).toContain(`${process.platform} ${process.arch}`)
    expect(rest.slice(4)).toEqual([''])
  })

  it.each([
    [
      'words of an error that may speak of the data',
      errorOf('Error', 'UNIQUE constraint: Ada Lark', { code: 'SQLITE_X' }),
    ],
    ['what JSON stumbled over', errorOf('SyntaxError', 'Unexpected token A, "Ada Lark" is not valid JSON')],
    ['what is quoted', errorOf('TypeError', 'Invalid value: "Ada Lark"')],
    ['the user’s folder', errorOf('TypeError', `no ${join(homedir(), 'Ada Lark.csv')}`)],
    ['a path', errorOf('RangeError', 'too long: /srv/Ada Lark/irons.csv')],
    ['a path of Windows', errorOf('RangeError', 'too long: C:\\Ada Lark\\irons.csv')],
    ['a code that is none', errorOf('Error', '', { code: '“/home/Ada Lark”' })],
    ['what is no error', { name: 'Ada Lark' }],
  ])('leaves out %s', (_, error) => {
    const text = textOf(error)
    expect(text).not.toMatch(/Ada|srv|irons\.csv/)
    expect(text).not.toContain(homedir() === '/' ? 'never' : homedir())
    expect(text).not.toMatch(new RegExp(`\\b${userInfo().username}\\b`))
  })
})

describe('the reports', () => {
  let place: ReturnType<typeof temporaryFolder>
  beforeEach(() => {
    place = temporaryFolder()
  })
  afterEach(() => place.remove())

  it('keep a fault once, twenty at most, newest first, and nothing else in their folder is taken for one', () => {
    const reports = createReports(place.folder, tickingClock())
    expect(reports.list()).toEqual([])
    for (let i = 0; i < 22; i += 1)
      for (let again = 0; again < 2; again += 1) reports.note({ part: 'page', error: `no ${i}` })
    writeFileSync(join(place.folder, 'reports', 'notes.txt'), 'mine')
    expect(reports.list()).toHaveLength(20)
    expect(reports.list()[0]?.text).toContain('no 21')
    expect(reports.list().at(-1)?.text).toContain('no 2\n')
    reports.remove(reports.list()[0]?.name ?? '')
    expect(reports.list()[0]?.text).toContain('no 20')
  })

  it('are no fault of their own where they cannot be written', () => {
    writeFileSync(join(place.folder, 'reports'), 'a file where the folder should be')
    const reports = createReports(place.folder, () => AT)
    expect(() => reports.note({ part: 'page', error: 'x' })).not.toThrow()
    expect(reports.list()).toEqual([])
    rmSync(join(place.folder, 'reports'))
  })

  it('are noted by the page, listed and deleted through the contract, by no other name', async () => {
    const bench = await openOwnBench(place.folder)
    await bench.done('report.note', { name: 'TypeError', message: 'x is null', stack: '    at draw (/x/grind.js:1:2)' })
    const [report] = await bench.done('report.list', {})
    expect(report?.text).toContain('part: page\nTypeError: x is null\n  at draw grind.js:1:2\n')
    mkdirSync(join(place.folder, 'reports', 'deeper'), { recursive: true })
    for (const name of ['../own.db', 'notes.txt', 'deeper/2026-01-05T08-00-00-000Z.txt', ''])
      expect(await bench.call('report.remove', { name })).toMatchObject({ ok: false })
    await bench.done('report.remove', { name: report?.name ?? '' })
    expect(readdirSync(join(place.folder, 'reports'))).toEqual(['deeper'])
    await bench.workshop.close()
  })
})

it('a page is started again twice within a minute, and then only when asked', () => {
  const may = countedRestarts()
  expect([0, 10_000, 20_000, 59_999, 60_000, 60_001].map(may)).toEqual([true, true, false, false, true, false])
})
