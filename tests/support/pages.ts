import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { i18n, TFunction } from 'i18next'
import help from '../../assets/texts/en/help.json' with { type: 'json' }
import { createTexts } from '../../main/texts.ts'
import type { Screen } from '../../renderer/app/route.ts'
import type { Entry } from '../../renderer/help/entry.ts'
import { jobFieldEntries } from '../../renderer/help/jobFieldEntries.ts'
import { keyEntries } from '../../renderer/help/keyEntries.ts'
import { partEntries } from '../../renderer/help/partEntries.ts'
import { problemEntries } from '../../renderer/help/problemEntries.ts'
import { quantityEntries } from '../../renderer/help/quantityEntries.ts'
import { wordEntries } from '../../renderer/help/wordEntries.ts'

const root = join(import.meta.dirname, '..', '..')
export const readmePath = join(root, 'README.md')
export const referencePath = join(root, 'assets', 'REFERENCE.md')

/** @returns texts with those of help, that throw where a key has no words of its own */
export const strictTexts = (): TFunction => {
  const texts: i18n = createTexts()
  texts.addResourceBundle('en', 'help', help)
  return ((key: string, params: { readonly defaultValue?: string } = {}) => {
    if (params.defaultValue === undefined && !texts.exists(key, params)) throw new Error(`no words for ${key}`)
    return texts.t(key, params)
  }) as TFunction
}

const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('\n', ' ')

/** A table of Markdown. @param even whether its columns are as wide as what stands in them, to be read as text */
const table = (rows: readonly (readonly string[])[], even: boolean): string => {
  const cells = rows.map((row) => row.map(cell))
  const widths = (cells[0] ?? []).map((_, i) => (even ? Math.max(...cells.map((row) => (row[i] ?? '').length)) : 3))
  const line = (row: readonly string[]): string =>
    `| ${row.map((text, i) => text.padEnd(widths[i] ?? 0)).join(' | ')} |`
  const [head = [], ...rest] = cells
  return [line(head), `| ${widths.map((width) => '-'.repeat(width)).join(' | ')} |`, ...rest.map(line)].join('\n')
}

const tableOf = (
  head: readonly string[],
  entries: readonly Entry[],
  row: (entry: Entry) => readonly string[],
): string => table([head, ...entries.map(row)], false)

const lowerFirst = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`.replace(/\.$/, '')

const never = (_screen: Screen, _name: string): boolean => false

/** The README's table of what each screen is for, from the words of help. */
export const screensTable = (t: TFunction): string => {
  const rows = partEntries(t, never).map(({ title, lines }) => [title, lowerFirst(lines[0] ?? '')])
  return table([['screen', 'what it is for'], ...rows], true)
}

const HEADING = '## What it does\n\n'

/** @returns the README with that table in its place */
export const readmeWith = (readme: string, screens: string): string => {
  const begin = readme.indexOf(HEADING) + HEADING.length
  return `${readme.slice(0, begin)}${screens}${readme.slice(readme.indexOf('\n\n', begin))}`
}

/** The reference: words, figures, keys, job file and what the program says, as help has them. */
export const referencePage = (t: TFunction): string => {
  const facts = ({ facts = [] }: Entry): string => facts.join('; ')
  const lines = ({ lines }: Entry): string => lines.join(' ')
  const parts = [
    ['words', tableOf(['word', 'meaning'], wordEntries(t), (entry) => [entry.title, lines(entry)])],
    [
      'quantities',
      tableOf(['group', 'figure', 'what it is', 'unit; range; without one'], quantityEntries(t, 'mm'), (entry) => [
        entry.group ?? '',
        entry.title,
        lines(entry),
        facts(entry),
      ]),
    ],
    [
      'keys',
      tableOf(['key', 'does', 'where'], keyEntries(t), (entry) => [entry.title, lines(entry), entry.group ?? '']),
    ],
    [
      'jobFile',
      tableOf(['field', 'what it is', 'what may stand there'], jobFieldEntries(t), (entry) => [
        `\`${entry.title}\``,
        lines(entry),
        facts(entry),
      ]),
    ],
    [
      'problems',
      tableOf(['code', 'what it says', 'more to do'], problemEntries(t), (entry) => [
        `\`${facts(entry)}\``,
        entry.title,
        lines(entry),
      ]),
    ],
  ] as const
  const sections = parts.map(
    ([page, made]) => `## ${t(`help:page.${page}`)}\n\n${t(`help:intro.${page}`)}\n\n${made}\n`,
  )
  return `# Reference\n\nAs the program’s own help has it; \`npm run pages\` writes it anew.\n\n${sections.join('\n')}`
}

export const readReadme = (): string => readFileSync(readmePath, 'utf8')
