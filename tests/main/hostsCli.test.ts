import { spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'

const cli = join(import.meta.dirname, '..', '..', 'main', 'cli.ts')
const folder = mkdtempSync(join(tmpdir(), 'camberwright-cli-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const run = (args: readonly string[], input = '') =>
  spawnSync(process.execPath, [cli, ...args], { encoding: 'utf8', input, cwd: folder })

const job = {
  version: 1,
  blade: { widthMm: 57, thicknessMm: 3.2, seatAngleDeg: 12, bevelSide: 'up' },
  station: { wheelDiameterMm: 250, wheelWidthMm: 50, barDiameterMm: 12 },
  fixture: { kind: 'steered', seatOffsetMm: 15, guideArmMm: 75, screwPitchMm: 0.8 },
  aim: { bevelAngleDeg: 25, projectionMm: 130, reliefMm: 0.5 },
  motion: { sweeps: 2 },
  grid: { across: 21, through: 5 },
}

const write = (name: string, text: string): string => {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}

const large = (): string => {
  const path = write('large.json', '')
  truncateSync(path, 200_000_000)
  return path
}

/** What a refusal must never hold. */
const leaks = /NaN|Infinity|undefined|\n\s+at |Error:|\[object|node:|\{\{/

const expectRefused = ({ status, stdout, stderr }: ReturnType<typeof run>, says: RegExp): void => {
  expect([status, stdout]).toEqual([2, ''])
  expect(stderr).toMatch(says)
  expect(stderr).not.toMatch(leaks)
  for (const line of stderr.trimEnd().split('\n')) expect(line).toMatch(/^(\w+(\.\w+)*: )?[A-Z“].*\.$/)
}

describe('a job in a file or from standard input', () => {
  it('gives the same report either way, each caution in words', () => {
    const text = JSON.stringify({ ...job, aim: { ...job.aim, shavingDepthMm: 1 } })
    const fromFile = run([write('good.json', text)])
    const fromInput = run(['-'], text)
    expect([fromFile.status, fromFile.stderr]).toEqual([0, ''])
    expect(fromInput.stdout).toBe(fromFile.stdout)
    const report = JSON.parse(fromFile.stdout)
    expect(report.cautions.length).toBeGreaterThan(0)
    for (const { text: words } of report.cautions) expect(words).toMatch(/^[A-Z].*\.$/)
    expect(fromFile.stdout).toMatch(/^\{\n {2}"setUp": \{\n {4}"/)
  })

  it('may begin with the mark that some editors write', () => {
    expect(run(['-'], `\uFEFF${JSON.stringify(job)}`).status).toBe(0)
  })
})

describe('what cannot be read', () => {
  it.each([
    ['a file of 200 MB', () => [large()], /too large for a job: 5 MB/],
    ['a folder', () => [folder], /could not be read/],
    ['no such file', () => [join(folder, 'none.json')], /could not be read.*none\.json/],
    ['an empty file', () => [write('empty.json', '')], /not a job file/],
    ['bytes that are no text', () => [write('bytes.json', '\0\x01\x02')], /not a job file/],
    ['no file at all', () => [], /Name one job file/],
    ['two files', () => ['a.json', 'b.json'], /Name one job file/],
    ['an unknown option', () => ['--colour', 'a.json'], /Name one job file/],
    ['a card without a place', () => ['a.json', '--card'], /Name one job file/],
  ])('%s', (_, args, says) => {
    expectRefused(run(args()), says)
  })

  it('input without end is refused at the limit', async () => {
    const child = spawn(process.execPath, [cli, '-'], { stdio: ['pipe', 'ignore', 'pipe'] })
    let said = ''
    child.stderr.on('data', (part) => {
      said += part
    })
    // Whoever is refused stops reading.
    child.stdin.on('error', () => undefined)
    const more = (): void => void (child.stdin.writable && child.stdin.write(' '.repeat(65_536), more))
    more()
    expect(await once(child, 'exit')).toEqual([2, null])
    expect(said).toMatch(/too large for a job/)
  })
})

describe('a job that cannot be done', () => {
  const damaged: readonly (readonly [string, unknown, RegExp])[] = [
    ['a list', [], /wrong|belongs|job/i],
    ['nothing', null, /belongs/],
    ['a newer version', { ...job, version: 2 }, /^version: .*newer version/],
    ['no version', { ...job, version: undefined }, /^version: /],
    ['an absurd width', { ...job, blade: { ...job.blade, widthMm: 1e9 } }, /^blade\.widthMm: .*too large/],
    ['a width in words', { ...job, blade: { ...job.blade, widthMm: '57' } }, /^blade\.widthMm: /],
    ['a nameless side', { ...job, blade: { ...job.blade, bevelSide: 'sideways' } }, /^blade\.bevelSide: .*up, down/],
    ['a wheel of nothing', { ...job, station: { ...job.station, wheelDiameterMm: 0 } }, /^station\.wheelDiameterMm: /],
    [
      'relief past half a circle',
      { ...job, aim: { ...job.aim, reliefMm: undefined, edgeRadiusMm: 20 } },
      /edgeRadiusMm: /,
    ],
    ['no aim', { ...job, aim: {} }, /^aim/m],
    ['three aims', { ...job, aim: { ...job.aim, barDistanceMm: 200 } }, /^aim/m],
    ['turns without an arm', { ...job, fixture: { ...job.fixture, guideArmMm: null } }, /guideArmMm: /],
    ['half a sweep', { ...job, motion: { sweeps: 2.5 } }, /^motion\.sweeps: .*whole/],
    ['no triangle', { ...job, aim: { projectionMm: 30, barDistanceMm: 400, reliefMm: 0 } }, /^aim\.\w+: /],
  ]

  it.each(damaged)('%s', (_, document, says) => {
    expectRefused(run(['-'], JSON.stringify(document)), says)
  })

  it('has a line for each reason', () => {
    const { stderr } = run(['-'], JSON.stringify({ ...job, colour: 1, grid: { across: -1, through: 'x' } }))
    expect(stderr.trimEnd().split('\n').length).toBe(3)
  })

  it('writes no card, and leaves the one that is there', () => {
    const card = write('card.pdf', 'the card of before')
    expectRefused(run(['-', '--card', card], '{'), /not a job file/)
    expect(readFileSync(card, 'utf8')).toBe('the card of before')
  })
})

describe('the card', () => {
  it('is written whole beside the report', () => {
    const card = join(folder, 'new.pdf')
    expect(run(['-', '--card', card], JSON.stringify(job)).status).toBe(0)
    expect(readFileSync(card).subarray(0, 5).toString()).toBe('%PDF-')
  })

  it('that cannot be written is a refusal, and leaves nothing behind', () => {
    const place = join(folder, 'taken')
    mkdirSync(place)
    expectRefused(run(['-', '--card', place], JSON.stringify(job)), /could not be written/)
    expect(readdirSync(place)).toEqual([])
    expect(existsSync(`${place}.unfinished`)).toBe(false)
  })
})

describe('what the command tells of itself', () => {
  it('the schema of the job file', () => {
    const schema = JSON.parse(run(['--schema']).stdout)
    expect(Object.keys(schema.properties)).toEqual(['version', 'blade', 'station', 'fixture', 'aim', 'motion', 'errors', 'grid'])
    expect(schema.additionalProperties).toBe(false)
  })

  it('how it is used', () => {
    const { status, stdout } = run(['--help'])
    expect(status).toBe(0)
    for (const option of ['--card', '--schema', 'job.json']) expect(stdout).toContain(option)
  })
})
