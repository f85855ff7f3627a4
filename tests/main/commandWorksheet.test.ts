import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { runCommand } from '../../main/commandLine/command.ts'
import { commandFolder, expectRefused } from './commandBench.ts'

const place = commandFolder()
afterAll(place.remove)

const at = (name: string): string => join(place.folder, name)
const own = join(import.meta.dirname, '../../assets/lessons/09-free-play.json')

/** Papers carry the moment they are made. */
beforeAll(() => void vi.useFakeTimers({ toFake: ['Date'], now: new Date('2026-01-05T08:00:00Z') }))
afterAll(() => void vi.useRealTimers())

const paper = (name: string): string => readFileSync(at(name)).toString('base64')

describe('a worksheet', () => {
  it('is the same for the same number, another for another, and has its answers apart', async () => {
    const made = await runCommand(['worksheet', 'free-play', at('a.pdf'), '--answers', at('b.pdf'), '--seed', '7'])
    expect([made.exitCode, made.errors]).toEqual([0, ''])
    expect(JSON.parse(made.output)).toEqual({ lesson: 'free-play', seed: 7, file: at('a.pdf'), answers: at('b.pdf') })
    // A file of the lesson gives the same as its name does.
    expect((await runCommand(['worksheet', own, at('c.pdf'), '--seed', '7'])).exitCode).toBe(0)
    await runCommand(['worksheet', 'free-play', at('d.pdf'), '--seed', '8'])
    expect(paper('c.pdf') === paper('a.pdf')).toBe(true)
    for (const other of ['b.pdf', 'd.pdf']) expect(paper(other) === paper('a.pdf')).toBe(false)
  })

  it.each([
    ['no lesson', [], /Name a lesson, then the file/],
    ['no file', ['free-play'], /Name a lesson, then the file/],
    ['standard output', ['free-play', '-'], /Name a lesson, then the file/],
    ['an unknown option', ['free-play', at('x.pdf'), '--colour'], /Name a lesson, then the file/],
    ['a lesson that there is not', ['free-beer', at('x.pdf')], /There is no lesson free-beer/],
    ['a file that is not there', [at('none.json'), at('x.pdf')], /could not be read/],
    ['a file that is no lesson', [place.write('no.json', '{\n"id": 3}'), at('x.pdf')], /^line \d+ \w+: /],
    ['half a number', ['free-play', at('x.pdf'), '--seed', '1.5'], /^--seed: “1\.5” is no number of a set/],
    ['a number too large', ['free-play', at('x.pdf'), '--seed', '1000000'], /up to 999999/],
    ['another unit', ['free-play', at('x.pdf'), '--unit', 'ell'], /^--unit: “ell” is no unit here/],
    ['another file in its place', ['free-play', own], /is there already and is no worksheet/],
  ])('%s', async (_, args, says) => {
    expectRefused(await runCommand(['worksheet', ...args]), says)
    expect(existsSync(at('x.pdf'))).toBe(false)
  })
})
