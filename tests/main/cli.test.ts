import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'

const cli = new URL('../../main/cli.ts', import.meta.url).pathname
const folder = mkdtempSync(join(tmpdir(), 'camberwright-cli-'))

const run = (text: string, ...args: readonly string[]) => {
  const place = join(folder, 'job.json')
  writeFileSync(place, text)
  return spawnSync(process.execPath, [cli, place, ...args], { encoding: 'utf8' })
}

const job = {
  version: 1,
  blade: { widthMm: 57, thicknessMm: 3.2, seatAngleDeg: 12, bevelSide: 'up' },
  station: { wheelDiameterMm: 250, wheelWidthMm: 50, barDiameterMm: 12 },
  fixture: { kind: 'square', seatOffsetMm: 15 },
  aim: { bevelAngleDeg: 25, projectionMm: 130, reliefMm: 0 },
  motion: { sweeps: 5 },
  grid: { across: 21, through: 5 },
}

describe('the command line', () => {
  it('prints the report and writes the card', () => {
    const card = join(folder, 'card.pdf')
    const { status, stdout, stderr } = run(JSON.stringify(job), '--card', card)
    expect([status, stderr]).toEqual([0, ''])
    expect(JSON.parse(stdout).setUp.gapMm).toBeCloseTo(76.5727, 3)
    expect(existsSync(card)).toBe(true)
  })

  it.each([
    ['broken JSON', '{"version": 1', /./],
    ['100,000 opening brackets', '['.repeat(100_000), /./],
    ['an unknown field', JSON.stringify({ ...job, colour: 'red' }), /colour/],
    ['a missing field', JSON.stringify({ ...job, blade: { ...job.blade, widthMm: undefined } }), /widthMm/],
    ['two aims at once', JSON.stringify({ ...job, aim: { ...job.aim, edgeRadiusMm: 500 } }), /aim/],
    [
      'a bar inside the wheel',
      JSON.stringify({ ...job, aim: { bevelAngleDeg: 25, barDistanceMm: 126, reliefMm: 0 } }),
      /barDistanceMm/,
    ],
    [
      'a wheel over its mark',
      JSON.stringify({ ...job, station: { ...job.station, wheelSpeedRpm: 3000 } }),
      /wheelSpeedRpm/,
    ],
    ['a negative width', JSON.stringify({ ...job, blade: { ...job.blade, widthMm: -57 } }), /widthMm/],
  ])('refuses %s', (_, text, naming) => {
    const { status, stdout, stderr } = run(text)
    expect(status).toBe(2)
    expect(stdout).toBe('')
    expect(stderr).toMatch(naming)
    expect(stderr).not.toMatch(/NaN|\n\s+at |Error:/)
  })
})
