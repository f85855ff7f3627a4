import { freedomFigures, freedomOf } from '../../geometry/freedom.ts'
import { hollowOf } from '../../geometry/hollow.ts'
import { type Job, type JobInput, jobSchema } from '../../geometry/job.ts'
import type { Report } from '../../geometry/report.ts'
import { setUpOf, setUpReport } from '../../geometry/setUp.ts'

type Change = { readonly [S in keyof JobInput]?: Partial<JobInput[S]> }

/** A low-angle jack iron on a wet wheel; sections changed where a test needs it. */
export const sampleJob = (change: Change = {}): Job =>
  jobSchema.parse({
    version: 1,
    blade: { widthMm: 57, thicknessMm: 3.2, seatAngleDeg: 12, bevelSide: 'up', ...change.blade },
    station: { wheelDiameterMm: 250, wheelWidthMm: 50, barDiameterMm: 12, ...change.station },
    fixture: { kind: 'steered', seatOffsetMm: 15, guideArmMm: 75, screwPitchMm: 0.8, ...change.fixture },
    aim: { bevelAngleDeg: 25, projectionMm: 130, reliefMm: 0.5, ...change.aim },
    motion: { stopTurnsLeft: 2, stopTurnsRight: 2, ...change.motion },
  })

/** A report for a card: set-up and freedom from the engine, an edge shaped like an arc of the given relief. */
export const sampleReport = (job: Job, reliefMm = 0.5): Report => {
  const setUp = setUpOf(job)
  if (!setUp.ok) throw new Error(setUp.problems[0]?.code)
  const freedom = freedomOf(job, setUp.value)
  if (!freedom.ok) throw new Error(freedom.problems[0]?.code)
  const shares = Array.from({ length: 101 }, (_, i) => i / 50 - 1)
  const edge = {
    edgeUMm: shares.map((share) => (share * job.blade.widthMm) / 2),
    edgeVMm: shares.map((share) => 0.3 + reliefMm * share * share),
    reliefLeftMm: reliefMm,
    reliefRightMm: reliefMm,
    skewDeg: 0,
  }
  return {
    setUp: setUpReport(job, setUp.value),
    hollow: hollowOf(setUp.value.wheelRadiusMm, setUp.value.bevelRad, job.blade.thicknessMm),
    plan: { reliefMm, woodReliefMm: null, edgeRadiusMm: null, shavingWidthMm: null },
    freedom: { ...freedomFigures(freedom.value), forAim: null, turnsForAim: null, turnsCalibrated: null },
    envelope: edge,
    grind: { ...edge, volumeRemovedMm3: 60, steps: 2880, bevelAngleDeg: 25 },
    learnt: null,
    band: { fromEdgeMm: [], fromHeelMm: [], stopSweep: null },
    woodView: null,
    uncertainty: { bevelAngleDeg: null, reliefLeftMm: null, reliefRightMm: null, skewDeg: null, parts: [] },
    cautions: [],
    engineVersion: 'test',
    job,
  }
}
