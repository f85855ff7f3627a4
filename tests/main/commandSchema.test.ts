import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { afterAll, describe, expect, it } from 'vitest'
import { runCommand } from '../../main/commandLine/command.ts'
import { commandFolder, expectRefused, soundJob } from './commandBench.ts'

const place = commandFolder()
afterAll(place.remove)

/** Judged by a library that knows nothing of ours (ajv, JSON Schema draft 2020-12), each keyword known to it. */
const judgeOf = async (name: string) => {
  const { exitCode, output } = await runCommand(['schema', name])
  expect(exitCode).toBe(0)
  const ajv = new Ajv2020({
    strictSchema: true,
    allowUnionTypes: true,
    formats: { uuid: true, date: true, 'date-time': true },
  })
  return ajv.compile(JSON.parse(output))
}

const json = async (...args: readonly string[]): Promise<unknown> => JSON.parse((await runCommand(args)).output)

describe('JSON Schema of the documents, by a validator of others', () => {
  it('lets a job in, and not one with a stranger in it or a figure out of range', async () => {
    const judge = await judgeOf('job')
    expect(judge(soundJob)).toBe(true)
    expect(judge({ ...soundJob, colour: 'red' })).toBe(false)
    expect(judge({ ...soundJob, blade: { ...soundJob.blade, widthMm: -1 } })).toBe(false)
  })

  it('describes the report as it is printed, whole', async () => {
    const judge = await judgeOf('report')
    const report = await json(place.write('job.json', JSON.stringify(soundJob)))
    expect(judge(report), JSON.stringify(judge.errors)).toBe(true)
    const { setUp: _, ...without } = report as Record<string, unknown>
    expect(judge(without)).toBe(false)
    expect(judge({ ...without, setUp: 'in words' })).toBe(false)
  })

  it('lets the lessons of the program in, and none without steps', async () => {
    const judge = await judgeOf('lesson')
    const lesson = JSON.parse(readFileSync(join(import.meta.dirname, '../../assets/lessons/09-free-play.json'), 'utf8'))
    expect(judge(lesson), JSON.stringify(judge.errors)).toBe(true)
    expect(judge({ ...lesson, steps: [] })).toBe(false)
  })

  it('lets a rack in as it is taken out', async () => {
    const judge = await judgeOf('rack')
    const file = join(place.folder, 'rack.json')
    const data = join(place.folder, 'data')
    expect((await runCommand(['rack', 'export', file, '--demo', '--data', data])).exitCode).toBe(0)
    const rack = JSON.parse(readFileSync(file, 'utf8'))
    expect(judge(rack), JSON.stringify(judge.errors)).toBe(true)
    expect(judge({ ...rack, form: 'another' })).toBe(false)
  })

  it('names those that there are where another is asked for', async () => {
    for (const args of [[], ['hammer'], ['job', 'rack'], ['constructor']])
      expectRefused(await runCommand(['schema', ...args]), /one of these: job, report, lesson, rack\./)
  })
})
