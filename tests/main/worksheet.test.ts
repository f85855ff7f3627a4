import { expect, it } from 'vitest'
import { loadTypefaces } from '../../main/cards/typefaces.ts'
import { readCsv } from '../../main/inOut/csv.ts'
import { layOutWorksheet } from '../../main/lessons/layOutWorksheet.ts'
import { makeWorksheet } from '../../main/lessons/makeWorksheet.ts'
import { progressTable } from '../../main/lessons/progressTable.ts'
import { paperQuestions } from '../../main/lessons/worksheet.ts'
import { createTexts } from '../../main/texts.ts'
import { found } from '../geometry/example.ts'
import { lessons } from '../lessons/support.ts'

const at = new Date('2026-02-03T09:00:00Z')
const byId = (id: string) => {
  const lesson = lessons.find((each) => each.id === id)
  if (!lesson) throw new Error(id)
  return lesson
}

it('has other figures for another set, and the same for the same', () => {
  const set = (seed: number) => JSON.stringify(found(paperQuestions(byId('why-a-curve'), seed, 'mm')))
  expect(set(7)).toBe(set(7))
  expect(new Set([1, 2, 3, 4, 5, 6].map(set)).size).toBeGreaterThan(1)
  for (const lesson of lessons)
    for (const { kind, choice, figure, edgeMm } of found(paperQuestions(lesson, 5, 'inch'))) {
      if (kind === 'choose') expect(choice, lesson.id).not.toBeNull()
      if (kind === 'predict') expect(figure, lesson.id).not.toMatch(/^…?$/)
      if (kind === 'draw') expect(edgeMm, lesson.id).toHaveLength(5)
    }
})

it('prints questions without their answers, and the answers that belong to them', async () => {
  const lesson = byId('the-seat')
  const questions = found(paperQuestions(lesson, 3, 'mm'))
  const head = { title: lesson.title, about: lesson.about, seed: 3 }
  const wordsOf = (answers: boolean) =>
    layOutWorksheet({ ...head, answers }, questions, createTexts().t, loadTypefaces())
      .flatMap(({ items }) => items.map((item) => (item.kind === 'text' ? item.text : '')))
      .join(' ')
  const [question] = questions
  const [asked, answered] = [wordsOf(false), wordsOf(true)]
  const figure = question?.figure.replace(/\s/g, ' ') as string
  const { bytes, fileName } = found(await makeWorksheet({ lesson, seed: 3, answers: true, lengthUnit: 'mm' }, at))
  expect(fileName).toBe('the-seat-answers-3.pdf')
  expect(new TextDecoder().decode(bytes.slice(0, 5))).toBe('%PDF-')
  expect(asked).toContain('How much of it does the wood see?')
  expect(asked).not.toContain(figure)
  expect(answered).toContain(figure)
  expect(asked).toContain('set 3')
})

it('refuses a lesson that asks nothing on paper', async () => {
  const lesson = { ...byId('the-seat'), steps: byId('the-seat').steps.filter(({ ask }) => ask === null) }
  expect(await makeWorksheet({ lesson, seed: 0, answers: false, lengthUnit: 'mm' }, at)).toMatchObject({
    ok: false,
    problems: [{ code: 'worksheetEmpty' }],
  })
})

it('puts what was learnt into a table that a spreadsheet works nothing out of', () => {
  const person = { id: 'p', code: 'N1', version: 1, name: '=1+1', apprentice: 'yes' as const }
  const line = { personId: 'p', lessonId: 'ink', step: 2, answers: { 0: { right: true, tries: 3, off: null } } }
  const times = { startedAt: '2026-01-01T00:00:00.000Z', at: '2026-01-02T00:00:00.000Z', doneAt: null }
  const lines = lessons.map((lesson) => ({ lesson, own: null }))
  const table = progressTable([{ ...line, ...times }], [person], lines, createTexts().t)
  expect(table).toContain("'=1+1")
  expect(found(readCsv(table, ',')).rows[0]?.cells.slice(0, 8)).toEqual([
    ...['=1+1', 'ink', byId('ink').title, '3', '3', '1', '3', '3'],
  ])
})
