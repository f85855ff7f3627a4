import { describe, expect, it } from 'vitest'
import { type Findings, findingsOf, textsOf } from '../../geometry/lesson/findings.ts'
import type { Change, Lesson, LessonStep } from '../../geometry/lesson/lesson.ts'
import { type Answer, markOf, rightChoices } from '../../geometry/lesson/mark.ts'
import { found } from '../geometry/example.ts'
import { lessonFiles, lessons, ways } from './support.ts'

const known = new Map<string, Findings>()
/** Each state is ground once, however many tests look at it. */
const findings = (lesson: Lesson, step: number, moved: Change = {}, seed = 0): Findings => {
  const key = JSON.stringify([lesson.id, step, moved, seed])
  const fresh = known.get(key) ?? found(findingsOf(lesson, step, moved, seed))
  known.set(key, fresh)
  return fresh
}

/** Every step that asks, by its name for a test. */
const asking = lessons.flatMap((lesson) =>
  lesson.steps.flatMap((step, k) => (step.ask ? [{ name: `${lesson.id}/${k}`, lesson, step, k, ask: step.ask }] : [])),
)

const right = ({ values, edgeMm }: Findings, { ask }: LessonStep): Answer => {
  if (ask?.kind === 'choose') return { kind: 'choose', choice: rightChoices(ask, values)[0] ?? -1 }
  if (ask?.kind === 'predict') return { kind: 'predict', value: values[ask.figure]?.value ?? Number.NaN }
  if (ask?.kind === 'draw') return { kind: 'draw', behindMm: edgeMm ?? [] }
  return { kind: 'reach' }
}

const wrong = (answer: Answer, { ask }: LessonStep): Answer => {
  if (answer.kind === 'choose' && ask?.kind === 'choose')
    return { ...answer, choice: (answer.choice + 1) % ask.choices.length }
  if (answer.kind === 'predict' && ask?.kind === 'predict')
    return { ...answer, value: answer.value + 1.5 * Math.max(ask.within, ask.share * Math.abs(answer.value)) }
  if (answer.kind === 'draw' && ask?.kind === 'draw')
    return { ...answer, behindMm: answer.behindMm.map((v, i) => (i === 0 ? v + 1.5 * ask.within : v)) }
  return answer
}

describe('the lessons', () => {
  it('are fourteen or more, in the order of their files, no name twice', () => {
    expect(lessons.length).toBeGreaterThanOrEqual(14)
    expect(new Set(lessons.map(({ id }) => id)).size).toBe(lessons.length)
    expect(lessonFiles.map((file) => file.replace(/^\d\d-|\.json$/g, ''))).toEqual(lessons.map(({ id }) => id))
  })

  it.each(lessons.map((lesson) => [lesson.id, lesson] as const))('%s has every figure its words name', (_, lesson) => {
    lesson.steps.forEach((__, k) => {
      for (const moved of [{}, ways[`${lesson.id}/${k}`] ?? {}]) {
        const { values } = findings(lesson, k, moved)
        for (const [ref, { value }] of Object.entries(values)) expect(value, `${k} ${ref}`).not.toBeNull()
      }
    })
  })

  it.each(asking.map((each) => [each.name, each] as const))(
    '%s takes the right answer and refuses a wrong one',
    (name, each) => {
      const { lesson, step, k, ask } = each
      const before = findings(lesson, k)
      if (ask.kind === 'reach') {
        expect(markOf(ask, { kind: 'reach' }, before.values, null).right, 'where it begins').toBe(false)
        const there = findings(lesson, k, ways[name] ?? {})
        expect(markOf(ask, { kind: 'reach' }, there.values, null), 'where the way leads').toMatchObject({ right: true })
        return
      }
      const answer = right(before, step)
      expect(markOf(ask, answer, before.values, before.edgeMm).right).toBe(true)
      expect(markOf(ask, wrong(answer, step), before.values, before.edgeMm).right).toBe(false)
    },
  )

  const guessed = asking.filter(({ ask, lesson }) => ask.kind === 'predict' && lesson.varied.length > 0)
  it.each(guessed.map((each) => [each.name, each] as const))('%s can be asked again with other figures', (_, each) => {
    for (const seed of [1, 2, 3]) {
      const { values } = findings(each.lesson, each.k, {}, seed)
      for (const [ref, { value }] of Object.entries(values)) expect(value, `seed ${seed}, ${ref}`).not.toBeNull()
    }
  })

  const chosen = asking.filter(({ ask }) => ask.kind === 'choose')
  it.each(chosen.map((each) => [each.name, each] as const))(
    '%s has one right choice, with other figures too',
    (_, each) => {
      for (const seed of each.lesson.varied.length > 0 ? [0, 1, 2, 3] : [0])
        if (each.ask.kind === 'choose')
          expect(rightChoices(each.ask, findings(each.lesson, each.k, {}, seed).values), `seed ${seed}`).toHaveLength(1)
    },
  )
})

/** Rough, as such counts are: groups of vowels, a silent e at the end left out. */
const syllables = (word: string): number =>
  Math.max(
    1,
    (
      word
        .toLowerCase()
        .replace(/e$/, '')
        .match(/[aeiouy]+/g) ?? []
    ).length,
  )

/** Kincaid and others, Research Branch Report 8-75 (1975); figures as public references give them: years of school that a text asks for. */
const schoolYears = (text: string): number => {
  const sentences = text.split(/[.?!:]+\s/).filter((each) => /\w/.test(each))
  const words = text.match(/[\p{L}’]+/gu) ?? []
  const count = words.reduce((sum, word) => sum + syllables(word), 0)
  return 0.39 * (words.length / sentences.length) + 11.8 * (count / words.length) - 15.59
}
/** Apprentices begin after nine or ten years of school, many read in a second language: two years are kept free. */
const MOST_YEARS = 7
const LONGEST_SENTENCE_WORDS = 26
/** A step is read standing, between two looks at the model: one idea, so many sentences and words before its question. */
const MOST_OF_STEP = { sentences: 6, words: 75 }

const sentencesOf = (text: string): readonly string[] =>
  text.split(/(?<=[.?!:])\s+/).filter((each) => /\p{L}/u.test(each))

it('counts as the published example of that measure does', () => {
  // 13 words, 24 syllables, one sentence: 0.39 x 13 + 11.8 x 24 / 13 - 15.59 = 11.26; so rough a count of syllables may miss two.
  const example = 'The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.'
  expect(Math.abs(schoolYears(example) - 11.26)).toBeLessThan((11.8 * 2.5) / 13)
})

it('calls right whatever is written as the engine writes it', () => {
  const told = { question: '', hints: [], right: '', wrong: '' }
  const values = { rimSpeedMPerS: { value: 1.1781, unit: 'mPerS', decimals: 1 } } as const
  const ask = { kind: 'predict', ...told, figure: 'rimSpeedMPerS', within: 0.001, share: 0 } as const
  expect(markOf(ask, { kind: 'predict', value: 1.2 }, values, null)).toMatchObject({ right: true })
  expect(markOf(ask, { kind: 'predict', value: 1.3 }, values, null)).toMatchObject({ right: false })
})

describe('their words', () => {
  const all = lessons.flatMap((lesson) => lesson.steps.map((step, k) => [`${lesson.id}/${k}`, textsOf(step)] as const))
  it.each(all)('of %s hold no typed figure and no long sentence', (_, texts) => {
    for (const text of texts) {
      const words = text.replace(/\{\{[^}]*\}\}/g, 'figure')
      expect(words).not.toMatch(/\d/)
      for (const sentence of words.split(/[.?!:]\s/))
        expect(sentence.split(/\s+/).length, sentence).toBeLessThanOrEqual(LONGEST_SENTENCE_WORDS)
    }
  })

  const steps = lessons.flatMap(({ id, steps }) => steps.map((step, k) => [`${id}/${k}`, step.text] as const))
  it.each(steps)('of %s are one idea long', (_, text) => {
    expect(text.flatMap(sentencesOf).length, 'sentences').toBeLessThanOrEqual(MOST_OF_STEP.sentences)
    expect(text.join(' ').split(/\s+/).length, 'words').toBeLessThanOrEqual(MOST_OF_STEP.words)
  })

  it.each(lessons.map((lesson) => [lesson.id, lesson] as const))('of %s can be read by an apprentice', (_, lesson) => {
    const text = lesson.steps.flatMap((step) => step.text).join(' ')
    expect(schoolYears(text.replace(/\{\{[^}]*\}\}/g, 'five'))).toBeLessThanOrEqual(MOST_YEARS)
  })
})
