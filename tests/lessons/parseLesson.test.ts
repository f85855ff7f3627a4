import { describe, expect, it } from 'vitest'
import { parseLesson, parseLessonText } from '../../geometry/lesson/parseLesson.ts'
import { lessonFiles, lessonText } from './support.ts'

type Plain = Record<string, unknown> & {
  steps: Record<string, unknown>[]
  job: Record<string, Record<string, unknown>>
}

/** A lesson of the program's own as plain JSON, with something done to it. */
const spoilt = (spoil: (lesson: Plain) => void): unknown => {
  const lesson = JSON.parse(lessonText(lessonFiles.find((file) => file.includes('free-play')) as string)) as Plain
  spoil(lesson)
  return lesson
}

const problemsWith = (spoil: (lesson: Plain) => void): readonly string[] => {
  const parsed = parseLesson(spoilt(spoil))
  return parsed.ok ? [] : parsed.problems.map(({ code, path }) => `${code} ${path}`)
}

const first = (lesson: Plain): Record<string, unknown> => lesson.steps[0] as Record<string, unknown>

describe('a lesson file is refused', () => {
  it.each<[string, (lesson: Plain) => void, string]>([
    ['of a version to come', (lesson) => (lesson.version = 2), 'lessonTooNew version'],
    ['without a title', (lesson) => delete lesson.title, 'missing title'],
    ['with a field nobody knows', (lesson) => (lesson.shoeSize = 44), 'unknownField shoeSize'],
    ['with a job that does not close', (lesson) => (lesson.job.aim = {}), 'aimNeedsTwo steps.0.set.job.aim'],
    ['with a name of no figure', (lesson) => (first(lesson).text = ['{{colour}}']), 'lessonRefUnknown steps.0'],
    [
      'with a case that is not there',
      (lesson) => (first(lesson).text = ['{{nine.reliefMm}}']),
      'lessonCaseUnknown steps.0',
    ],
    [
      'moving what cannot be moved',
      (lesson) => (first(lesson).move = ['blade.bevelSide']),
      'lessonPlaceUnknown steps.0.move',
    ],
    [
      'setting what is not there',
      (lesson) => (first(lesson).set = { 'moon.phase': 1 }),
      'lessonPlaceUnknown steps.0.set',
    ],
    [
      'setting beyond its range',
      (lesson) => (first(lesson).set = { 'motion.stopTurnsLeft': 99 }),
      'tooLarge steps.0.set.job.motion.stopTurnsLeft',
    ],
    [
      'reaching into what every object has',
      (lesson) => (first(lesson).set = { 'constructor.name': 'x' }),
      'lessonPlaceUnknown steps.0.set',
    ],
    ['without steps', (lesson) => (lesson.steps = []), 'tooFew steps'],
    ['with a text as long as a book', (lesson) => (first(lesson).text = ['a'.repeat(5000)]), 'tooLong steps.0.text.0'],
    ['with half a character', (lesson) => (lesson.title = 'Half \ud800'), 'notText title'],
  ])('%s', (_, spoil, problem) => {
    expect(problemsWith(spoil)).toContain(problem)
  })

  it('that is no JSON, or has no end', () => {
    expect(parseLessonText('{"version": 1,')).toMatchObject({ ok: false, problems: [{ code: 'notJson' }] })
    expect(parseLessonText('x'.repeat(500_001))).toMatchObject({ ok: false, problems: [{ code: 'lessonTooLong' }] })
  })

  it('and taken as it stands otherwise', () => {
    expect(problemsWith(() => undefined)).toEqual([])
    expect(problemsWith((lesson) => (lesson.title = '‮<script>alert(1)</script>'))).toEqual([])
  })
})
