import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import { afterAll, describe, expect, it } from 'vitest'
import { runCommand } from '../../main/commandLine/command.ts'
import { lockFolder } from '../../main/database/lock.ts'
import { commandFolder, expectRefused } from './commandBench.ts'
import { openOwnBench, toolsOf } from './support.ts'

const cli = join(import.meta.dirname, '..', '..', 'main', 'cli.ts')
const place = commandFolder()
afterAll(place.remove)

const at = (name: string): string => join(place.folder, name)
let racks = 0
/** A data folder that is not there yet. */
const newData = (): string => at(`data-${++racks}`)

const run = async (...args: readonly string[]) => {
  const end = await runCommand(['rack', ...args])
  expect([end.exitCode, end.errors]).toEqual([0, ''])
  return JSON.parse(end.output)
}

const head = 'name,kind,width (mm),thickness,bevelSide,bevelAngleDeg,projectionMm,reliefMm,shavingDepthMm\n'
const block = 'Block of oak,block,41,3.2,up,25,120,0.1,0.05\n'
const table = place.write('irons.csv', `${head}Jack of oak,jack,50,3,down,25,130,0.8,0.2\n${block}`)
const faulty = place.write('faulty.csv', `${head}Jack of oak,jack,wide,3,down,25,130,0.8,0.2\n${block}`)

describe('a rack in a script', () => {
  it('is filled from a table, taken out by the ending, and brought in elsewhere byte for byte', async () => {
    const [first, second] = [newData(), newData()]
    const script = spawnSync(process.execPath, [cli, 'rack', 'import', table, '--data', first], { encoding: 'utf8' })
    expect([script.status, script.stderr]).toEqual([0, ''])
    expect(JSON.parse(script.stdout)).toMatchObject({ written: true, counts: [{ noun: 'tool', added: 2 }] })
    for (const ending of ['zip', 'json', 'csv'])
      expect(await run('export', at(`one.${ending}`), '--data', first)).toMatchObject({ file: at(`one.${ending}`) })
    await run('import', at('one.zip'), '--data', second)
    for (const ending of ['zip', 'json', 'csv']) {
      await run('export', at(`two.${ending}`), '--data', second)
      expect(readFileSync(at(`two.${ending}`)).equals(readFileSync(at(`one.${ending}`)))).toBe(true)
      // An earlier one of its kind is replaced: a script does so every night.
      await run('export', at(`two.${ending}`), '--data', second)
    }
    expect(await run('import', at('one.csv'), '--data', second)).toMatchObject({ counts: [{ added: 0, same: 2 }] })
    const bench = await openOwnBench(second)
    expect((await toolsOf(bench)).map(({ name, widthMm }) => [name, widthMm])).toEqual([
      ['Jack of oak', 50],
      ['Block of oak', 41],
    ])
    await bench.workshop.close()
  })

  it('is only looked at in a dry run, and no rack is begun for that or for a file with faults', async () => {
    const data = newData()
    const asked = ['import', table, '--dry-run', '--data', data] as const
    expect(await run(...asked)).toMatchObject({ written: false, counts: [{ added: 2 }] })
    expectRefused(await runCommand(['rack', 'import', faulty, '--data', data]), /^Row 2, width \(mm\): /)
    expect(readdirSync(data).filter((name) => name.startsWith('own'))).toEqual([])
    const left = await run('import', faulty, '--leave-out', '--data', data)
    expect(left).toMatchObject({ written: true, counts: [{ added: 1, faulty: 1 }], faultCount: 1 })
    expect(left.faults[0].text).toMatch(/^“wide” is not a figure/)
  })
})

describe('a rack that is looked through', () => {
  it('tells what it holds, and of one iron its card', async () => {
    const data = newData()
    await run('import', table, '--data', data)
    expect(await run('check', '--data', data)).toMatchObject({ file: join(data, 'own.db'), tools: 2 })
    expect(await run('card', '2', at('two.pdf'), '--demo', '--data', data)).toEqual({ tool: '2', file: at('two.pdf') })
    expect(readFileSync(at('two.pdf')).subarray(0, 5).toString()).toBe('%PDF-')
    expectRefused(await runCommand(['rack', 'card', '77', at('no.pdf'), '--data', data]), /There is no tool 77/)
    expectRefused(await runCommand(['rack', 'card', '1', at('no.pdf'), '--data', data]), /There is no station yet/)
    expectRefused(await runCommand(['rack', 'card', '2', table, '--data', data]), /is there already and is no card/)
    expect(existsSync(at('no.pdf'))).toBe(false)
  })

  it('is left as it is where it is damaged, and where a line of it is none', async () => {
    const data = newData()
    await run('import', table, '--data', data)
    const file = join(data, 'own.db')
    const sound = readFileSync(file)
    // Pages of the file are overwritten, but for the first.
    writeFileSync(file, Buffer.concat([sound.subarray(0, 4096), Buffer.alloc(sound.length - 4096, 7)]))
    const damaged = readFileSync(file)
    expectRefused(await runCommand(['rack', 'check', '--data', data]), /is damaged\. It was left as it is/)
    expect(readFileSync(file).equals(damaged)).toBe(true)
    writeFileSync(file, sound)
    const open = new BetterSqlite(file)
    open.exec("UPDATE change SET after = '{' WHERE noun = 'tool'")
    open.close()
    expectRefused(await runCommand(['rack', 'check', '--data', data]), /cannot be read as it stands/)
  })
})

describe('what cannot be done with a rack', () => {
  it('a rack that is open in the program stays its own', async () => {
    const data = newData()
    await run('import', table, '--data', data)
    const open = lockFolder(data)
    expectRefused(await runCommand(['rack', 'export', at('open.zip'), '--data', data]), /is open already/, 3)
    expectRefused(await runCommand(['rack', 'import', table, '--data', data]), /is open already/, 3)
    expect(existsSync(at('open.zip'))).toBe(false)
    if (open.ok) open.value.release()
    await run('export', at('open.zip'), '--data', data)
  })

  it('a damaged rack is told, and not taken for an empty one', async () => {
    const data = newData()
    await run('import', table, '--data', data)
    writeFileSync(join(data, 'own.db'), 'no rack at all, though as long as one'.repeat(200))
    const end = await runCommand(['rack', 'export', at('lost.zip'), '--data', data])
    expect(end.exitCode).toBe(2)
    expect(existsSync(at('lost.zip'))).toBe(false)
  })

  it.each([
    ['nothing of it', [], /Say rack export, rack import, /],
    ['no file', ['export'], /Say rack export, rack import, /],
    ['two files', ['import', 'a.csv', 'b.csv'], /Say rack export, rack import, /],
    ['another word', ['melt', 'a.csv'], /Say rack export, rack import, /],
    ['standard output', ['export', '-'], /Say rack export, rack import, /],
    ['an unknown option', ['export', 'a.csv', '--colour'], /Say rack export, rack import, /],
    ['a dry run of an export', ['export', 'a.csv', '--dry-run'], /Say rack export, rack import, /],
    ['another ending', ['export', 'rack.txt'], /cannot be taken out as rack\.txt/],
    ['an unknown noun', ['export', 'rack.csv', '--noun', 'hammer'], /“hammer” is no kind of thing/],
    ['pictures as a table', ['export', at('p.csv'), '--noun', 'photo', '--demo'], /A table holds one kind of thing/],
    ['a rack that was never begun', ['export', at('none.zip')], /There is no rack of your own/],
    ['another file in its place', ['export', table], /was not taken out of a rack/],
    ['a folder that is not there', ['export', at('nowhere/rack.zip')], /could not be written/],
    ['a file that is not there', ['import', at('none.csv')], /could not be read/],
    ['a file that is no rack', ['import', place.write('no.json', '{"a": 1}')], /This is no rack of this program/],
  ])('%s', async (_, args, says) => {
    expectRefused(await runCommand(['rack', ...args, '--data', newData()]), says)
  })
})
