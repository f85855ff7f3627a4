import { describe, expect, it } from 'vitest'
import { makeCard } from '../../main/cards/makeCard.ts'
import {
  fixtureSchema,
  type JobRecord,
  jobRecordSchema,
  stationSchema,
  toolSchema,
} from '../../main/contract/entities.ts'
import { sampleJob } from './cardSample.ts'

const AT = new Date('2025-11-24T12:00:00Z')
const id = (last: number) => `00000000-0000-4000-8000-00000000000${last}`

const tool = toolSchema.parse({
  id: id(1),
  code: 'T/14',
  version: 1,
  name: 'Low-angle jack iron',
  kind: 'lowAngleJack',
  widthMm: 57,
  thicknessMm: 3.2,
  seatAngleDeg: 12,
  bevelSide: 'up',
  bevelAngleDeg: 25,
  projectionMm: 130,
  reliefMm: 0.5,
  shavingDepthMm: 0.1,
})
const station = stationSchema.parse({
  id: id(2),
  code: 'S1',
  version: 1,
  name: 'Wet wheel',
  wheelDiameterMm: 250,
  wheelWidthMm: 50,
  wheelSpeedRpm: 90,
  maxRimSpeedMPerS: 20,
  barDiameterMm: 12,
  rotation: 'intoEdge',
  cooling: 'wet',
  measuredAt: '2025-11-20T12:00:00Z',
})
const fixture = fixtureSchema.parse({
  id: id(3),
  code: 'F1',
  version: 1,
  name: 'Steered',
  kind: 'steered',
  seatOffsetMm: 15,
  guideArmMm: 75,
  screwPitchMm: 0.8,
})
const recordOf = (change: Parameters<typeof sampleJob>[0]): JobRecord =>
  jobRecordSchema.parse({
    id: id(4),
    code: 'J1',
    version: 1,
    toolId: tool.id,
    stationId: station.id,
    fixtureId: fixture.id,
    document: { ...sampleJob(change), grid: { across: 15, through: 5 } },
  })

describe('a card from the rack', () => {
  it('is solved, written and named for any system', async () => {
    const made = await makeCard({ tool, station, fixture, job: recordOf({ motion: { sweeps: 4 } }), holder: '' }, AT)
    if (!made.ok) throw new Error(made.problems.map(({ code }) => code).join())
    expect(made.value.fileName).toBe('job-card-T-14.pdf')
    expect(Buffer.from(made.value.bytes.subarray(0, 5)).toString()).toBe('%PDF-')
  })

  it('is refused with the problems of a job that cannot be set up', async () => {
    const job = recordOf({ aim: { bevelAngleDeg: null, projectionMm: 130, barDistanceMm: 20 } })
    const made = await makeCard({ tool, station, fixture, job, holder: '' }, AT)
    expect(made).toMatchObject({ ok: false, problems: [{ code: expect.any(String) }] })
  })
})
