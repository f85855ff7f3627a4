import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { runCommand } from '../../main/commandLine/command.ts'
import { exitCodes } from '../../main/commandLine/commandEnd.ts'
import { commandFolder, jobTextWith, soundJob } from './commandBench.ts'

const cli = join(import.meta.dirname, '..', '..', 'main', 'cli.ts')
const place = commandFolder()
afterAll(place.remove)

/** What a workshop may run every night: it stops at the first command that does not end as it should. */
const nightly = `
set -eu
ends() { wanted=$1; shift; set +e; "$@" >out.txt 2>err.txt; code=$?; set -e; test "$code" = "$wanted"; }
job() { "$NODE" "$CLI" "$@"; }
job - --card card.pdf <job.json >report.json
job rack import irons.csv --data rack >brought.json
job backup make night.db --data rack >copy.json
job check job.json irons.csv night.db report-less.json >checked.json 2>/dev/null || test $? = 2
ends 2 job wrong.json
test ! -s out.txt
grep -q "blade.widthMm" err.txt
echo "$(wc -c <card.pdf) $(grep -c '"tools": 1' copy.json)"
`

describe('the command line as a script meets it', () => {
  it('a job, its card, a table, a copy and a check, one after the other, by exit codes alone', () => {
    place.write('job.json', JSON.stringify(soundJob))
    place.write('wrong.json', jobTextWith('blade.widthMm', 0))
    place.write(
      'irons.csv',
      'name,kind,width (mm),thickness,bevelSide,bevelAngleDeg,projectionMm,reliefMm,shavingDepthMm\nOak,jack,50,3,down,25,130,0.8,0.2\n',
    )
    const { status, stdout, stderr } = spawnSync('sh', ['-c', nightly], {
      encoding: 'utf8',
      cwd: place.folder,
      env: { ...process.env, NODE: process.execPath, CLI: cli },
    })
    expect([status, stderr]).toEqual([0, ''])
    const [cardBytes, tools] = stdout.trim().split(' ').map(Number)
    expect(cardBytes).toBeGreaterThan(10_000)
    expect(tools).toBe(1)
  })
})

describe('help', () => {
  const commands = ['report', 'check', 'worksheet', 'rack', 'backup', 'schema']

  it('of the whole names every command and every exit code', async () => {
    for (const asked of [['--help'], ['-h']]) {
      const { exitCode, output } = await runCommand(asked)
      expect(exitCode).toBe(0)
      for (const name of commands.slice(1)) expect(output).toContain(`\n  ${name} `)
      for (const code of Object.values(exitCodes)) expect(output).toMatch(new RegExp(`\\n {2}${code} {2}\\S`))
    }
  })

  it.each(commands)('of %s tells its own options, also in the midst of a call', async (name) => {
    const { exitCode, output } = await runCommand([name, 'export', '--help'])
    expect(exitCode).toBe(0)
    expect(output).toContain(`job -- ${name === 'report' ? 'JOB.json' : name}`)
    expect(output).not.toMatch(/\{\{|command:/)
  })

  it('of a job is that of reports', async () => {
    const asked = await runCommand(['some.json', '--help'])
    expect(asked.output).toBe((await runCommand(['report', '--help'])).output)
  })
})
