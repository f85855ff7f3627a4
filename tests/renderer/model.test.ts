import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { sectionsOf } from '../../renderer/grind/model/sections.ts'

const page = readFileSync(new URL('../../geometry/MODEL.md', import.meta.url), 'utf8')

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

test("the model's page is read whole, and holds nothing that would show as a bare mark", () => {
  const sections = sectionsOf(page)
  expect(sections.map(({ heading }) => heading)).toContain('What is left out')
  const shown = sections.flatMap(({ blocks }) => blocks.flatMap(({ lines }) => lines.flat().map(({ text }) => text)))
  const words = (text: string) => text.split(/[\s*_`#-]+/).filter((word) => word !== '').length
  expect(words(shown.join(' '))).toBeGreaterThan(0.95 * words(page.slice(page.indexOf('## '))) - 60)
  for (const text of shown) expect(text).not.toMatch(/\*\*|`|^#|\[[^\]]*\]\(|^\||^\d+\. /m)
})
