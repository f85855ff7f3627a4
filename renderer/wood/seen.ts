import { seatSine } from '../../geometry/aim.ts'
import { anglesInUse, capAdvice, type Joint, jointOf, skewedDeg } from '../../geometry/plane.ts'
import {
  crownMm,
  mirroredProfile,
  type Profile,
  profileReliefMm,
  skewedProfile,
  turnedProfile,
} from '../../geometry/profile.ts'
import type { Report } from '../../geometry/report.ts'
import { type Cut, cornersIn, cutOf, ridgeMm } from '../../geometry/shaving.ts'
import type { Tool } from '../../main/contract/entities.ts'
import type { WoodSetting } from './setting.ts'

/** What the wood meets, seen from behind the plane: left and right are the plane's, with the dot where it then is. */
export interface Seen {
  readonly profile: Profile
  readonly seatSine: number
  readonly depthMm: number
  readonly cut: Cut
  readonly corners: { readonly leftMm: number; readonly rightMm: number }
  /** Height of the ridges between passes; null: one pass alone, or a strip stays between them. */
  readonly ridgeMm: number | null
  readonly crownMm: number
  /** Null: the iron does not cover the stock. */
  readonly joint: Joint | null
  /** Mean of left and right, as it lies with the lever straight. */
  readonly camberMm: number
  readonly cap: { readonly setbackMm: number; readonly advice: ReturnType<typeof capAdvice> } | null
  /** With the plane held as it is. */
  readonly pitchDeg: number
  readonly clearanceDeg: number
  readonly dot: 'left' | 'right'
}

/** @returns null for a tool without a seat */
export const seenBy = (
  profile: Profile,
  tool: Pick<Tool, 'seatAngleDeg' | 'bevelSide' | 'backBevelDeg' | 'dotCorner' | 'capSetbackMm' | 'honedBevelDeg'>,
  report: Pick<Report, 'job'> & { readonly setUp: Pick<Report['setUp'], 'bevelAngleDeg'> },
  setting: WoodSetting,
): Seen | null => {
  const sine = seatSine(report.job)
  const { seatAngleDeg, bevelSide, backBevelDeg, dotCorner, capSetbackMm } = tool
  if (sine === null || seatAngleDeg === null) return null
  const turnedOver = bevelSide === 'up'
  const inPlane = turnedOver ? mirroredProfile(profile) : profile
  const lies = turnedProfile(inPlane, setting.leverDeg)
  const askew = skewedProfile(lies, setting.skewDeg)
  const depthMm = setting.depthMm ?? report.job.aim.shavingDepthMm
  const honedDeg = tool.honedBevelDeg ?? report.setUp.bevelAngleDeg
  const { pitchDeg, clearanceDeg } = anglesInUse({ seatAngleDeg, bevelSide, honedDeg, backBevelDeg })
  return {
    profile: askew,
    seatSine: sine,
    depthMm,
    cut: cutOf(askew, depthMm, sine),
    corners: cornersIn(askew, depthMm, sine, setting.boardMm),
    ridgeMm: setting.stepMm === null ? null : ridgeMm(askew, setting.stepMm, sine),
    crownMm: crownMm(lies),
    joint: jointOf(lies, setting.stockMm, setting.shiftMm, sine),
    camberMm: profileReliefMm(profile) * sine,
    cap:
      capSetbackMm === null || turnedOver
        ? null
        : { setbackMm: capSetbackMm, advice: capAdvice(capSetbackMm, profileReliefMm(profile)) },
    pitchDeg: skewedDeg(pitchDeg, setting.skewDeg),
    clearanceDeg: skewedDeg(clearanceDeg, setting.skewDeg),
    dot: turnedOver === (dotCorner === 'right') ? 'left' : 'right',
  }
}
