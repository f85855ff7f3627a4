import type { TFunction } from 'i18next'
import type { Lesson } from '../../geometry/lesson/lesson.ts'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { type Settings, settingsSchema } from '../contract/entities.ts'
import { MOST_SEED } from '../contract/teaching.ts'
import { builtInLessons } from '../lessons/builtIn.ts'
import { makeWorksheet } from '../lessons/makeWorksheet.ts'
import { type CommandEnd, done, inJson, refusedFor } from './commandEnd.ts'
import { mayWrite, worksheetKind, writeWhole } from './outFile.ts'
import { readArgs, STANDARD } from './readArgs.ts'
import { readLesson } from './readLesson.ts'
import { readText } from './readText.ts'

interface WorksheetOptions {
  /** The name of one of the program's lessons, or a lesson file. */
  readonly lesson: string
  readonly place: string
  readonly answersPlace: string | null
  readonly seed: number
  readonly lengthUnit: Settings['lengthUnit']
}

const USAGE = 'worksheetUsage'

const seedOf = (text: string): Result<number> => {
  const seed = Number(text)
  const isSeed = /^\d+$/.test(text) && seed <= MOST_SEED
  return isSeed ? ok(seed) : failed(problem('worksheetSeed', '--seed', { text, most: MOST_SEED }))
}

const unitOf = (text: string): Result<Settings['lengthUnit']> => {
  const unit = settingsSchema.shape.lengthUnit.safeParse(text)
  return unit.success ? ok(unit.data) : failed(problem('worksheetUnit', '--unit', { text }))
}

const optionsOf = (args: readonly string[]): Result<WorksheetOptions> => {
  const options = {
    answers: { type: 'string' },
    seed: { type: 'string', default: '1' },
    unit: { type: 'string', default: 'mm' },
  } as const
  const read = readArgs(args, options, USAGE)
  if (!read.ok) return read
  const [lesson, place, ...others] = read.value.positionals
  const { answers, ...values } = read.value.values
  if (!lesson || !place || others.length > 0 || [place, answers].some((each) => each === '' || each === STANDARD))
    return failed(problem(USAGE))
  const [seed, unit] = [seedOf(values.seed), unitOf(values.unit)]
  if (!seed.ok) return seed
  if (!unit.ok) return unit
  return ok({ lesson, place, answersPlace: answers ?? null, seed: seed.value, lengthUnit: unit.value })
}

/** What looks like a path is a file; a bare word is the name of a lesson. */
const lessonOf = async (t: TFunction, word: string): Promise<Result<Lesson>> => {
  const known = builtInLessons().find(({ id }) => id === word)
  if (known) return ok(known)
  if (/^[a-z0-9-]+$/.test(word)) return failed(problem('lessonUnknown', '', { lessonId: word }))
  const text = await readText(word)
  return text.ok ? readLesson(t, text.value) : text
}

const write = async (t: TFunction, options: WorksheetOptions): Promise<Result<WorksheetOptions>> => {
  const { place, answersPlace, seed, lengthUnit } = options
  for (const may of [mayWrite(place, worksheetKind), mayWrite(answersPlace, worksheetKind)]) if (!may.ok) return may
  const lesson = await lessonOf(t, options.lesson)
  if (!lesson.ok) return lesson
  for (const [file, answers] of [[place, false] as const, [answersPlace, true] as const]) {
    if (file === null) continue
    const made = await makeWorksheet({ lesson: lesson.value, seed, answers, lengthUnit }, new Date())
    const written = made.ok ? writeWhole(file, made.value.bytes) : made
    if (!written.ok) return written
  }
  return ok(options)
}

/** Writes the questions of a lesson on paper, and their answers. */
export const runWorksheet = async (t: TFunction, args: readonly string[]): Promise<CommandEnd> => {
  const options = optionsOf(args)
  const written = options.ok ? await write(t, options.value) : options
  if (!written.ok) return refusedFor(t, written.problems)
  const { lesson, place, answersPlace, seed } = written.value
  return done(inJson({ lesson, seed, file: place, answers: answersPlace }))
}
