import { globSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'

const root = join(import.meta.dirname, '..', '..')

/** Sheets of what is drawn or laid over a drawing: there left is left, in the wood and at the wheel. */
const drawn = new Set(
  [
    'grind/glass',
    'grind/handles/handles',
    'grind/overlay',
    'grind/runStrip',
    'grind/strip/eventMarks',
    'measure/photograph',
    'scan/scan',
    'setUp/more',
    'setUp/setUp',
  ].map((name) => `renderer/${name}.css`),
)

const SIDED =
  /^\s*((margin|padding|border)-(left|right)|left|right|float: (left|right)|text-align: (left|right))\b.*;$/gm

it('style sheets say where words begin and end, not left and right, but for what is drawn', () => {
  const sided = globSync('renderer/**/*.css', { cwd: root })
    .map((path) => path.replaceAll('\\', '/'))
    .flatMap((path) => (readFileSync(join(root, path), 'utf8').match(SIDED) ?? []).map((line) => [path, line.trim()]))
  expect(sided.filter(([path]) => !drawn.has(path as string))).toEqual([])
  expect([...drawn].filter((path) => !sided.some(([other]) => other === path))).toEqual([])
})
