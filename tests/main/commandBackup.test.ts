import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { runCommand } from '../../main/commandLine/command.ts'
import { lockFolder } from '../../main/database/lock.ts'
import { commandFolder, expectRefused } from './commandBench.ts'

const place = commandFolder()
afterAll(place.remove)

const at = (name: string): string => join(place.folder, name)
const head = 'name,kind,width (mm),thickness,bevelSide,bevelAngleDeg,projectionMm,reliefMm,shavingDepthMm\n'
const oak = place.write('oak.csv', `${head}Jack of oak,jack,50,3,down,25,130,0.8,0.2\n`)
const ash = place.write('ash.csv', `${head}Block of ash,block,41,3.2,up,25,120,0.1,0.05\n`)

let racks = 0
/** A data folder with a rack of one iron. */
const newRack = async (): Promise<string> => {
  const data = at(`data-${++racks}`)
  await say('rack', 'import', oak, '--data', data)
  return data
}

const say = async (...args: readonly string[]) => {
  const end = await runCommand(args)
  expect([end.exitCode, end.errors]).toEqual([0, ''])
  return JSON.parse(end.output)
}

const toolsIn = async (data: string): Promise<number> => (await say('rack', 'check', '--data', data)).tools

describe('copies of the data', () => {
  it('are made, listed and gone back to by name, and what was there becomes one', async () => {
    const data = await newRack()
    const made = await say('backup', 'make', '--data', data)
    expect(existsSync(made.file)).toBe(true)
    expect(await say('backup', 'list', '--data', data)).toContainEqual(made)
    // Bringing a file in makes a copy of its own, which takes the place of one of the same hour.
    await say('rack', 'import', ash, '--data', data)
    const [newest] = await say('backup', 'list', '--data', data)
    const gone = await say('backup', 'restore', newest.name, '--data', data)
    expect(gone).toMatchObject({ file: newest.file, tools: 1 })
    expect(await toolsIn(data)).toBe(1)
    expect(await say('backup', 'restore', basename(gone.before), '--data', data)).toMatchObject({ tools: 2 })
    expect(await toolsIn(data)).toBe(2)
  })

  it('go to a place of one’s own while the program has the data open, and begin a rack elsewhere', async () => {
    const data = await newRack()
    const open = lockFolder(data)
    expect(await say('backup', 'make', at('night.db'), '--data', data)).toMatchObject({
      file: at('night.db'),
      tools: 1,
    })
    // An earlier copy is replaced: a script makes one every night.
    await say('backup', 'make', at('night.db'), '--data', data)
    expectRefused(await runCommand(['backup', 'restore', at('night.db'), '--data', data]), /is open already/, 3)
    expectRefused(await runCommand(['backup', 'make', '--data', data]), /is open already/, 3)
    if (open.ok) open.value.release()
    const elsewhere = at('elsewhere')
    await say('backup', 'restore', at('night.db'), '--data', elsewhere)
    expect(await toolsIn(elsewhere)).toBe(1)
  })

  it('bring a damaged rack back', async () => {
    const data = await newRack()
    await say('backup', 'make', at('sound.db'), '--data', data)
    writeFileSync(join(data, 'own.db'), 'no rack at all, though as long as one'.repeat(200))
    const end = await runCommand(['backup', 'restore', at('sound.db'), '--data', data])
    expect([end.exitCode, JSON.parse(end.output).tools]).toEqual([0, 1])
    expect(end.errors).toMatch(/^The data file was damaged\. It was put aside/)
    expect(await toolsIn(data)).toBe(1)
  })

  it('that cannot be used change nothing', async () => {
    const data = await newRack()
    const bad = place.write('bad.db', `SQLite format 3\0${'x'.repeat(5000)}`)
    expectRefused(await runCommand(['backup', 'restore', bad, '--data', data]), /is damaged/)
    expectRefused(await runCommand(['backup', 'restore', 'none.db', '--data', data]), /There is no copy none\.db/)
    expectRefused(await runCommand(['backup', 'make', oak, '--data', data]), /is there already and is no copy/)
    expect(readFileSync(oak, 'utf8')).toContain('Jack of oak')
    expect(await toolsIn(data)).toBe(1)
  })

  it('of a rack that was never begun there are none', async () => {
    const data = at('never')
    expect(await say('backup', 'list', '--data', data)).toEqual([])
    expectRefused(await runCommand(['backup', 'make', at('no.db'), '--data', data]), /There is no rack of your own/)
    expect(existsSync(at('no.db'))).toBe(false)
  })

  it.each([
    [[]],
    [['melt']],
    [['restore']],
    [['list', 'x']],
    [['make', 'a', 'b']],
    [['make', '-']],
    [['list', '--colour']],
  ])('%j is no call', async (args) => {
    expectRefused(await runCommand(['backup', ...args]), /Say backup list, backup make or backup restore/)
  })
})
