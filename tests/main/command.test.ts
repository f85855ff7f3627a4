import { spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { mkdirSync, readdirSync, readFileSync, symlinkSync, truncateSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { runCommand } from '../../main/commandLine/command.ts'
import { commandFolder, expectRefused, jobTextWith, soundJob } from './commandBench.ts'

const cli = join(import.meta.dirname, '..', '..', 'main', 'cli.ts')
const place = commandFolder()
afterAll(place.remove)

const sound = place.write('sound.json', JSON.stringify(soundJob))

/** The real process. */
const run = (args: readonly string[], input = '') =>
  spawnSync(process.execPath, [cli, ...args], { encoding: 'utf8', input, cwd: place.folder })

const large = (): string => {
  const path = place.write('large.json', '')
  truncateSync(path, 200_000_000)
  return path
}

describe('a job in a file or from standard input', () => {
  it('gives the same report either way, each caution in words', async () => {
    const text = jobTextWith('aim.shavingDepthMm', 1)
    const fromInput = run(['-'], text)
    const fromFile = await runCommand([place.write('good.json', text)])
    expect([fromInput.status, fromInput.stderr]).toEqual([0, ''])
    expect(fromFile).toEqual({ exitCode: 0, output: fromInput.stdout, errors: '' })
    const report = JSON.parse(fromFile.output)
    expect(report.setUp.gapMm).toBeCloseTo(76.5727, 3)
    expect(report.cautions.length).toBeGreaterThan(0)
    for (const { text: words } of report.cautions) expect(words).toMatch(/^[A-Z].*\.$/)
    expect(fromFile.output).toMatch(/^\{\n {2}"setUp": \{\n {4}"/)
  })

  it('may begin with the mark that some editors write', async () => {
    expect((await runCommand([place.write('marked.json', `\uFEFF${JSON.stringify(soundJob)}`)])).exitCode).toBe(0)
  })

  it('is refused by the process as by the command: exit code 2, reasons on standard error', () => {
    const { status, stdout, stderr } = run(['-'], jobTextWith('colour', 'red'))
    expectRefused({ exitCode: status ?? -1, output: stdout, errors: stderr }, /^colour: /)
  })
})

describe('what cannot be read', () => {
  it.each([
    ['a file of 200 MB', () => [large()], /too large for a job: 5 MB/],
    ['a folder', () => [place.folder], /could not be read/],
    ['no such file', () => ['none.json'], /could not be read: none\.json/],
    ['a file without a name', () => [''], /Name one job file/],
    ['no file at all', () => [], /Name one job file/],
    ['two files', () => ['a.json', 'b.json'], /Name one job file/],
    ['an unknown option', () => ['--colour', 'a.json'], /Name one job file/],
    ['a card without a place', () => [sound, '--card'], /Name one job file/],
    ['a card without a name', () => [sound, '--card='], /Name one job file/],
    ['a card on standard output', () => [sound, '--card=-'], /Name one job file/],
  ])('%s', async (_, args, says) => {
    expectRefused(await runCommand(args()), says)
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

describe('the card', () => {
  it('is written whole beside the report, and replaces an earlier card', async () => {
    const card = place.write('new.pdf', '%PDF-1.7 of before')
    expect((await runCommand([sound, '--card', card])).exitCode).toBe(0)
    expect(readFileSync(card).subarray(0, 5).toString()).toBe('%PDF-')
    expect(readFileSync(card).length).toBeGreaterThan(10_000)
    expect(readdirSync(place.folder)).not.toContain('new.pdf.unfinished')
  })

  it.each([
    ['the job file itself', () => sound],
    ['another file', () => place.write('notes.txt', 'keep')],
    ['what is no file', () => '/dev/null'],
    ['a folder', () => place.folder],
    ['a link to another file', linkToNotes],
  ])('is not written over %s', async (_, card) => {
    expectRefused(await runCommand([sound, '--card', card()]), /is there already and is no card/)
    expect(JSON.parse(readFileSync(sound, 'utf8'))).toEqual(soundJob)
    expect(readdirSync(place.folder).filter((name) => name.endsWith('.unfinished'))).toEqual([])
  })

  it('is not written for a job that cannot be done, and leaves the one that is there', async () => {
    const card = place.write('old.pdf', '%PDF-1.7 of before')
    expectRefused(await runCommand([place.write('bad.json', '{'), '--card', card]), /ends too early/)
    expect(readFileSync(card, 'utf8')).toBe('%PDF-1.7 of before')
  })

  it('in a folder that is not there is a refusal, before any work', async () => {
    const card = join(place.folder, 'nowhere', 'card.pdf')
    expectRefused(await runCommand([place.write('bad.json', '{'), '--card', card]), /could not be written/)
  })
})

describe('the ground blade', () => {
  /** Corners of the triangles of a binary STL file, as text so that equal places compare equal. */
  const trianglesOf = (bytes: Buffer): readonly (readonly string[])[] =>
    Array.from({ length: bytes.readUInt32LE(80) }, (_, k) =>
      [0, 1, 2].map((corner) =>
        [0, 1, 2].map((axis) => bytes.readFloatLE(84 + 50 * k + 12 + 12 * corner + 4 * axis)).join(' '),
      ),
    )

  it('is a closed solid: every side of a triangle is met by another, the other way round', async () => {
    const solid = join(place.folder, 'blade.stl')
    expect((await runCommand([sound, '--solid', solid])).exitCode).toBe(0)
    const sides = trianglesOf(readFileSync(solid)).flatMap(([a, b, c]) => [`${a}|${b}`, `${b}|${c}`, `${c}|${a}`])
    const known = new Set(sides)
    expect(known.size).toBe(sides.length)
    expect(sides.length).toBeGreaterThan(500)
    expect(sides.filter((side) => !known.has(side.split('|').reverse().join('|')))).toEqual([])
  })

  it('replaces an earlier one, and nothing else', async () => {
    const notes = place.write('notes.stl', 'keep')
    expectRefused(await runCommand([sound, '--solid', notes]), /is no ground blade/)
    expect(readFileSync(notes, 'utf8')).toBe('keep')
    const solid = join(place.folder, 'twice.stl')
    await runCommand([sound, '--solid', solid])
    expect((await runCommand([sound, '--solid', solid])).exitCode).toBe(0)
  })
})

function linkToNotes(): string {
  mkdirSync(join(place.folder, 'links'))
  const link = join(place.folder, 'links', 'card.pdf')
  symlinkSync(place.write('notes.txt', 'keep'), link)
  return link
}
