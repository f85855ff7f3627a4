import { type Job, type JobInput, jobSchema } from '../../geometry/job.ts'
import {
  bladeOf,
  fixtureOf,
  isSteered,
  type JobParts,
  motionFor,
  stationOf,
  type ToolAim,
  toolAimOf,
} from '../contract/jobParts.ts'

/** Free play to start from: the usual setting of a block-plane iron, with room both ways. */
const FIRST_STOP_TURNS = 1
/** How far out the fingers go at first, just short of the corners: 26 mm on a 57 mm iron, and no further on a wider one. */
const MOST_FINGER_REACH_MM = 26
const FINGER_REACH_SHARE = 26 / 57

const fingerReachMm = (widthMm: number): number =>
  Math.round(Math.min(MOST_FINGER_REACH_MM, FINGER_REACH_SHARE * widthMm))

/** The first job of a tool: its marks, the station and fixture at hand, the rest from the quantity table. */
export const newDocument = ({ tool, station, fixture, calibration }: JobParts): Job => {
  const turns = isSteered(fixture) && tool.reliefMm > 0 ? FIRST_STOP_TURNS : 0
  return jobSchema.parse({
    version: 1,
    blade: bladeOf(tool),
    station: stationOf(station),
    fixture: { ...fixtureOf(fixture), calibration },
    aim: toolAimOf(tool),
    motion: { stopTurnsLeft: turns, stopTurnsRight: turns, fingerReachMm: fingerReachMm(tool.widthMm) },
  } satisfies JobInput)
}

/** A figure of the aim follows the tool where the tool was changed since, and the aim is given by that figure at all. */
const aimFollowing = (aim: Job['aim'], was: ToolAim, is: ToolAim): Job['aim'] => {
  const followed = Object.entries(is).filter(([key, value]) => {
    const figure = key as keyof ToolAim
    return was[figure] !== value && aim[figure] !== null
  })
  return { ...aim, ...Object.fromEntries(followed) }
}

/**
 * The job with today's blade, wheel and fixture in it: figures come from the records, which are measured again and again,
 * never from the copy in an old job.
 *
 * @param was the tool's figures when the job was last written
 */
export const inStep = (job: Job, { tool, station, fixture, calibration }: JobParts, was: ToolAim): Job =>
  jobSchema.parse({
    ...job,
    blade: { ...job.blade, ...bladeOf(tool) },
    station: stationOf(station),
    fixture: { ...job.fixture, ...fixtureOf(fixture), calibration },
    aim: aimFollowing(job.aim, was, toolAimOf(tool)),
    motion: motionFor(job.motion, fixture),
  })
