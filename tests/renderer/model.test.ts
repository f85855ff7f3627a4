import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { sectionsOf } from '../../renderer/grind/model/sections.ts'

const pageIn = (file: string): string => readFileSync(new URL(`../../geometry/${file}`, import.meta.url), 'utf8')

test('headings, paragraphs, points and stress are told apart', () => {
  expect(sectionsOf('# Top\n\nbefore\n\n## One\n\nplain _odd_ **great**\ngoes on\n\n- a\n  b\n- `c`\n')).toEqual([
    {
      heading: 'One',
      blocks: [
        {
          kind: 'paragraph',
          lines: [
            [
              { kind: 'plain', text: 'plain ' },
              { kind: 'em', text: 'odd' },
              { kind: 'plain', text: ' ' },
              { kind: 'strong', text: 'great' },
              { kind: 'plain', text: ' goes on' },
            ],
          ],
        },
        { kind: 'list', lines: [[{ kind: 'plain', text: 'a b' }], [{ kind: 'code', text: 'c' }]] },
      ],
    },
  ])
})

const pages = ['MODEL.md', 'MODEL.de.md']

test.each(pages)('%s is read whole, and holds nothing that would show as a bare mark', (file) => {
  const page = pageIn(file)
  const shown = sectionsOf(page).flatMap(({ blocks }) =>
    blocks.flatMap(({ lines }) => lines.flat().map(({ text }) => text)),
  )
  const words = (text: string) => text.split(/[\s*_`#-]+/).filter((word) => word !== '').length
  expect(words(shown.join(' '))).toBeGreaterThan(0.95 * words(page.slice(page.indexOf('## '))) - 60)
  for (const text of shown) expect(text).not.toMatch(/\*\*|`|^#|\[[^\]]*\]\(|^\||^\d+\. /m)
})

test('the page says the same in German: its sections, points and figures', () => {
  const [english, german] = pages.map((file) => sectionsOf(pageIn(file)))
  const shape = (sections: typeof english) =>
    sections?.map(({ blocks }) => blocks.map(({ kind, lines }) => [kind, lines.length]))
  expect(shape(german)).toEqual(shape(english))
  const figures = (sections: typeof english) =>
    sections?.map(({ blocks }) =>
      (
        JSON.stringify(blocks)
          .replaceAll(/(\d),(\d)/g, '$1.$2')
          .match(/\d[\d.]*\d|\d/g) ?? []
      ).sort(),
    )
  expect(figures(german)).toEqual(figures(english))
})
