import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { runCommand } from '../../main/commandLine/command.ts'
import { commandFolder, expectRefused, jobTextWith, soundJob } from './commandBench.ts'

const place = commandFolder()
afterAll(place.remove)

const lesson = readFileSync(join(import.meta.dirname, '../../assets/lessons/09-free-play.json'), 'utf8')
const head = 'name,kind,width (mm),thickness,bevelSide,bevelAngleDeg,projectionMm,reliefMm,shavingDepthMm\n'
const row = 'Jack of oak,jack,50,3,down,25,130,0.8,0.2\n'

const check = async (...files: readonly string[]) => {
  const { exitCode, output, errors } = await runCommand(['check', ...files])
  return { exitCode, errors, found: JSON.parse(output) as { file: string; kind: string; reasons: string[] }[] }
}

/** A file of each kind that can be used, and what it is. */
const sound: readonly (readonly [string, string])[] = [
  [place.write('job.json', JSON.stringify(soundJob)), 'job'],
  [place.write('lesson.json', lesson), 'lesson'],
  [place.write('irons.csv', head + row), 'rack'],
]

describe('files that are checked', () => {
  it('are told by what is in them, whatever they are called', async () => {
    const data = join(place.folder, 'data')
    const copy = join(place.folder, 'copy.txt')
    const rack = join(place.folder, 'rack.zip')
    await runCommand(['rack', 'export', rack, '--demo', '--data', data])
    await runCommand(['backup', 'make', copy, '--demo', '--data', data])
    const files = [...sound, [rack, 'rack'], [copy, 'data']] as const
    const { exitCode, errors, found } = await check(...files.map(([file]) => file))
    expect([exitCode, errors]).toEqual([0, ''])
    expect(found).toEqual(files.map(([file, kind]) => ({ file, kind, reasons: [] })))
  })

  it.each([
    ['a job that cannot be ground', jobTextWith('aim.barDistanceMm', 100), 'a.json', 'job', /^aim/],
    ['a job that breaks off', '{"version": 1', 'b.cwjob', 'job', /ends too early/],
    ['a lesson that names nothing', lesson.replace('{{', '{{nothing'), 'c.json', 'lesson', /^line \d+ steps\.\d+: /],
    ['a lesson that breaks off', lesson.slice(0, 200), 'd.cwlesson', 'lesson', /^line \d+: /],
    ['a table with a fault', head + row.replace('50', 'wide'), 'e.csv', 'rack', /^Row 2, width \(mm\): “wide”/],
    ['a document of another', '{"form": "another"}', 'f.json', 'rack', /This is no rack of this program/],
    ['a copy that is none', `SQLite format 3\0${'x'.repeat(5000)}`, 'g.db', 'data', /is damaged/],
    ['letters of another encoding', new Uint8Array([0x7b, 0xff, 0xfe]), 'h.json', 'job', /no plain text/],
  ] as const)('%s', async (_, content, name, kind, says) => {
    const file = place.write(name, content)
    const { exitCode, errors, found } = await check(sound[0]?.[0] ?? '', file)
    expect([exitCode, found.map((each) => each.kind)]).toEqual([2, ['job', kind]])
    expect(found[0]?.reasons).toEqual([])
    expect(found[1]?.reasons[0]).toMatch(says)
    expect(errors).toContain(`: ${found[1]?.reasons[0]}\n`)
  })

  it('that are not there do not keep the others from being looked at', async () => {
    const { exitCode, found } = await check(join(place.folder, 'none.json'), sound[1]?.[0] ?? '')
    expect(exitCode).toBe(2)
    expect(found.map(({ kind, reasons }) => [kind, reasons.length])).toEqual([
      [null, 1],
      ['lesson', 0],
    ])
  })

  it.each([[[]], [['-']], [['']], [['--colour', 'a.json']]])('%j is no call', async (args) => {
    expectRefused(await runCommand(['check', ...args]), /Name the files that are to be checked/)
  })
})
