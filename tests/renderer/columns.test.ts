import { expect, it } from 'vitest'
import { columnsOf, withColumn } from '../../renderer/rack/columns.tsx'
import { patternOf, readPattern } from '../../renderer/rack/toolSheet/pattern.ts'
import { toolDraft } from '../main/support.ts'

it('columns are the usual ones until others are chosen; code and tool never go; unknown names are left out', () => {
  expect(columnsOf('')).toContain('projection')
  expect(columnsOf('')).not.toContain('maker')
  const chosen = withColumn(withColumn('', 'maker', true), 'projection', false)
  expect(columnsOf(chosen)).toEqual([
    'code',
    'tool',
    'maker',
    ...columnsOf('').filter((name) => !['code', 'tool', 'projection'].includes(name)),
  ])
  expect(columnsOf('steel,hue')).toEqual(['code', 'tool', 'steel'])
})

it('a pattern holds what irons of a kind share, and of a damaged or older one what is sound', () => {
  const pattern = patternOf({ ...toolDraft, steel: 'O1', note: 'mine', lengthLeftMm: 30 })
  expect(pattern).toMatchObject({ kind: 'try', steel: 'O1', widthMm: 60 })
  expect(Object.keys(pattern)).not.toEqual(expect.arrayContaining(['note']))
  expect(Object.keys(pattern)).not.toEqual(expect.arrayContaining(['lengthLeftMm']))
  expect(readPattern(JSON.stringify(pattern))).toEqual({ ok: true, value: pattern })
  expect(readPattern('{"kind":"jack","widthMm":-4,"hue":"red"}')).toEqual({ ok: true, value: { kind: 'jack' } })
  for (const text of ['', '{', '[]', '7', 'null']) expect(readPattern(text).ok).toBe(false)
})
