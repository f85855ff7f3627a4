import { expect, it } from 'vitest'
import { columnsOf, withColumn } from '../../renderer/rack/columns.tsx'

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
