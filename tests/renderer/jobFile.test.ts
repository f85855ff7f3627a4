import { expect, test } from 'vitest'
import { solveJob } from '../../geometry/solveJob.ts'
import { readJob } from '../../main/commandLine/readJob.ts'
import { jobFileName, jobFileText, readJobFile, takenOver } from '../../renderer/grind/jobFile/jobFile.ts'
import { jobOf } from './loopBench.ts'

test('a job saved and opened is the same job, here and on the command line, and grinds the same edge', () => {
  const text = jobFileText(jobOf())
  const opened = readJobFile(text)
  const read = readJob(text)
  if (!opened.ok || !read.ok) throw new Error('a saved job can be opened')
  expect(opened.value).toEqual(jobOf())
  expect(read.value).toEqual(jobOf())
  expect(solveJob(opened.value)).toEqual(solveJob(jobOf()))
  expect(jobFileText(opened.value)).toBe(text)
})

const threeOfTriangle = { ...jobOf().aim, barDistanceMm: 200 }

test.each([
  ['no JSON', 'nonsense', 'notJson'],
  ['a newer version', '{"version": 99}', 'versionTooNew'],
  ['three sides of the triangle', JSON.stringify({ ...jobOf(), aim: threeOfTriangle }), 'aimNeedsTwo'],
])('%s is refused', (_, text, code) => {
  const opened = readJobFile(text)
  expect(opened.ok ? [] : opened.problems.map((found) => found.code)).toContain(code)
})

test('aim and motion are taken over, blade, station and fixture stay', () => {
  const other = jobOf({ stopTurnsLeft: 0.5 })
  const own = { ...jobOf(), blade: { ...jobOf().blade, widthMm: 44 } }
  expect(takenOver(own, other)).toEqual({ ...own, motion: other.motion, aim: other.aim })
})

test('a file name holds nothing that a system refuses', () => {
  expect(jobFileName('06', 'Jack: 12°/25° "low"\n')).toBe('06 Jack 12° 25° low.cwjob')
})
