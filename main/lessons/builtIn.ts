import wheelAndHands from '../../assets/lessons/01-wheel-and-hands.json' with { type: 'json' }
import whyACurve from '../../assets/lessons/02-why-a-curve.json' with { type: 'json' }
import theSeat from '../../assets/lessons/03-the-seat.json' with { type: 'json' }
import lateralLever from '../../assets/lessons/04-lateral-lever.json' with { type: 'json' }
import measuring from '../../assets/lessons/05-measuring.json' with { type: 'json' }
import theTriangle from '../../assets/lessons/06-the-triangle.json' with { type: 'json' }
import ink from '../../assets/lessons/07-ink.json' with { type: 'json' }
import squareAndDressing from '../../assets/lessons/08-square-and-dressing.json' with { type: 'json' }
import freePlay from '../../assets/lessons/09-free-play.json' with { type: 'json' }
import fingers from '../../assets/lessons/10-fingers.json' with { type: 'json' }
import freshen from '../../assets/lessons/11-freshen.json' with { type: 'json' }
import roofAndArc from '../../assets/lessons/12-roof-and-arc.json' with { type: 'json' }
import honing from '../../assets/lessons/13-honing.json' with { type: 'json' }
import faultHunt from '../../assets/lessons/14-fault-hunt.json' with { type: 'json' }
import type { Lesson } from '../../geometry/lesson/lesson.ts'
import { parseLesson } from '../../geometry/lesson/parseLesson.ts'
import { FIRST_LANGUAGE, type Language, language } from '../contract/language.ts'
import { german } from './builtInDe.ts'

/** The program's own lessons in English, in the order in which one learns. */
const english: readonly unknown[] = [
  wheelAndHands,
  whyACurve,
  theSeat,
  lateralLever,
  measuring,
  theTriangle,
  ink,
  squareAndDressing,
  freePlay,
  fingers,
  freshen,
  roofAndArc,
  honing,
  faultHunt,
]

/** @returns the lesson, or ends the program: a lesson of its own that is not one is a fault of the build */
const sound = (document: unknown): Lesson => {
  const parsed = parseLesson(document)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
  return parsed.value
}

/** The documents of each language, of which the first has them all; another language's is the same lesson in other words. */
const documents: Readonly<Record<Language, readonly unknown[]>> = { en: english, de: german }

const known: Partial<Record<Language, readonly Lesson[]>> = {}

const lessonsIn = (wanted: Language): readonly Lesson[] => {
  known[wanted] ??= documents[wanted].map(sound)
  return known[wanted]
}

/** @returns the program's own lessons in the language spoken, or in English where one is not written in it; read once, when first asked for */
export const builtInLessons = (): readonly Lesson[] => {
  const spoken = lessonsIn(language())
  return lessonsIn(FIRST_LANGUAGE).map((lesson) => spoken.find(({ id }) => id === lesson.id) ?? lesson)
}
