import { meanReliefMm } from './edge.ts'
import { pathOf } from './motion.ts'
import { LEAST_CLEARANCE_DEG } from './plane.ts'
import { reachLimitMm } from './reach.ts'
import type { Caution, Report } from './report.ts'
import { UNTOUCHED_MM } from './tolerances.ts'

/** A bevel off by more than this shows as ink at heel or edge alone (deg). */
const BEVEL_MATCH_DEG = 0.3

const caution = (code: string, params: Caution['params'] = {}): Caution => ({ code, params })

/** A mean relief nearer to the wanted one than this share is no shortfall to speak of. */
const SHORT_SHARE = 0.9

/** Beyond the limit of the law by this much the corners follow in a workshop's time; nearer to it they take thousands of sweeps. */
const AMPLE_REACH = 1.15

type Findings = Omit<Report, 'cautions' | 'engineVersion'>

/** A flat bevel meets the rim in its middle where it is as steep as the chord of the hollow that is ground into it. */
const aboutBevel = ({ job, hollow, woodView }: Findings): Caution[] => {
  const found: Caution[] = []
  const { chordAngleDeg: chordDeg } = hollow
  const params = { currentBevelDeg: job.blade.currentBevelDeg ?? chordDeg, chordDeg }
  if (params.currentBevelDeg < chordDeg - BEVEL_MATCH_DEG) found.push(caution('edgeFirst', params))
  if (params.currentBevelDeg > chordDeg + BEVEL_MATCH_DEG) found.push(caution('heelFirst', params))
  if (woodView && woodView.clearanceDeg < LEAST_CLEARANCE_DEG)
    found.push(caution('clearanceLow', { clearanceDeg: woodView.clearanceDeg }))
  return found
}

const aboutAim = ({ plan, freedom, job }: Findings, mostTurns: number | null): Caution[] => {
  const found: Caution[] = []
  const turns = freedom.turnsForAim
  if (turns?.code === 'squareFixture') found.push(caution('squareFixtureCannotCurve'))
  if (turns?.code === 'beyondStopTravel') found.push(caution('turnsBeyondStopTravel', { mostTurns: mostTurns ?? 0 }))
  if (turns?.code === 'fingersTooShort') {
    const neededMm = AMPLE_REACH * reachLimitMm(pathOf(job.motion), job.blade.widthMm)
    found.push(caution('fingersTooShort', { fingerReachMm: job.motion.fingerReachMm, neededMm }))
  }
  const { shavingDepthMm } = job.aim
  if (plan.woodReliefMm !== null && plan.woodReliefMm > 0 && shavingDepthMm > plan.woodReliefMm)
    found.push(caution('shavingDeeperThanCamber', { shavingDepthMm, woodReliefMm: plan.woodReliefMm }))
  return found
}

/** A straight edge that is free to turn needs the fingers within the limit. */
const aboutStraight = ({ plan, freedom, job }: Findings): Caution[] => {
  const { yawLeftDeg, yawRightDeg, rollLeftDeg, rollRightDeg } = freedom
  const held = [yawLeftDeg, yawRightDeg, rollLeftDeg, rollRightDeg].every((deg) => deg === 0)
  if (held || plan.reliefMm > 0 || job.fixture.kind === 'swing') return []
  const mostMm = reachLimitMm(pathOf(job.motion), job.blade.widthMm)
  const { fingerReachMm } = job.motion
  return fingerReachMm > mostMm ? [caution('cornersWearFaster', { fingerReachMm, mostMm })] : []
}

const aboutGrind = ({ grind, plan, job }: Findings): Caution[] => {
  const found: Caution[] = []
  const { wheelWidthMm } = job.station
  const coverMm = wheelWidthMm / 2 + job.motion.traverseMm
  const halfWidthMm = job.blade.widthMm / 2
  if (coverMm < halfWidthMm) found.push(caution('wheelNarrow', { coverMm, halfWidthMm }))
  const start = job.blade.startEdge
  const reliefMm = meanReliefMm(grind)
  const wantedMm = plan.reliefMm
  if (job.aim.task === 'reshape' && reliefMm < SHORT_SHARE * wantedMm)
    found.push(caution('reliefShort', { reliefMm, wantedMm }))
  if (job.aim.task === 'freshen' && start === null && grind.edgeVMm.some((v) => v > UNTOUCHED_MM))
    found.push(caution('edgeMoves'))
  if ((grind.edgeVMm[0] as number) - (start?.[0] ?? 0) < UNTOUCHED_MM)
    found.push(caution('cornerNotTouched', { side: 'left' }))
  if ((grind.edgeVMm.at(-1) as number) - (start?.at(-1) ?? 0) < UNTOUCHED_MM)
    found.push(caution('cornerNotTouched', { side: 'right' }))
  return found
}

/** What a user should know though the job can be done, weightiest first. */
export const cautionsOf = (
  findings: Findings,
  mostTurns: number | null,
  otherBevelDeg: number | null,
): readonly Caution[] => [
  ...aboutAim(findings, mostTurns),
  ...aboutStraight(findings),
  ...aboutBevel(findings),
  ...aboutGrind(findings),
  ...(otherBevelDeg === null ? [] : [caution('secondBranch', { otherBevelDeg })]),
]
