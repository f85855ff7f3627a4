import type { Job } from '../../../geometry/job.ts'
import { parseJobText } from '../../../geometry/parseJob.ts'
import type { Result } from '../../../geometry/result.ts'
import { fileKinds } from '../../../main/contract/fileKinds.ts'
import { closing } from '../../app/jobParts.ts'

/** What a file name may not hold on one system or another, and what no shell likes. */
const UNFIT = /[\\/:*?"<>|\p{Cc}]+/gu

/** @returns a name for the file of a tool's job */
export const jobFileName = (code: string, name: string): string =>
  `${`${code} ${name}`.replace(UNFIT, ' ').replace(/\s+/g, ' ').trim()}.${fileKinds.job.ending}`

/** The job as text, defaults and all: the file that `npm run job` reads. */
export const jobFileText = (job: Job): string => `${JSON.stringify(job, null, 2)}\n`

/** The door for a job file: its text, its schema, the rules between fields, and whether the triangle closes. */
export const readJobFile = (text: string): Result<Job> => closing(parseJobText(text))

/** The job in hand with the aim and motion of another; sizes, station and fixture belong to the records. */
export const takenOver = (own: Job, other: Job): Job => ({ ...own, aim: other.aim, motion: other.motion })
