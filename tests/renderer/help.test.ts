import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import cautions from '../../assets/texts/en/cautions.json' with { type: 'json' }
import common from '../../assets/texts/en/common.json' with { type: 'json' }
import help from '../../assets/texts/en/help.json' with { type: 'json' }
import problems from '../../assets/texts/en/problems.json' with { type: 'json' }
import { allEntries } from '../../renderer/help/allEntries.ts'
import { pageOf, pages } from '../../renderer/help/entry.ts'
import { findEntries, indexed } from '../../renderer/help/find.ts'
import { readmeWith, readReadme, referencePage, referencePath, screensTable, strictTexts } from '../support/pages.ts'

const t = strictTexts()
const partNames: Readonly<Record<string, object>> = common.part
const entries = allEntries(t, {
  lengthUnit: 'mm',
  about: { version: '1.2.3', engine: '4.5.6', file: '/data/own.db', copies: '/data/copies' },
  modelPage: readFileSync(new URL('../../geometry/MODEL.md', import.meta.url), 'utf8'),
  isPart: (screen, name) => name in (partNames[screen] ?? {}),
})
const index = indexed(entries)
const firstFound = (typed: string): string | undefined => findEntries(index, typed)[0]?.id

const root = join(import.meta.dirname, '..', '..')
const sources = ['geometry', 'main', 'renderer']
  .flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' }).map((name) => join(root, folder, name)),
  )
  .filter((path) => /\.tsx?$/.test(path))
  .map((path) => readFileSync(path, 'utf8'))
  .join('\n')

const codes = new Set(
  [...Object.keys(problems), ...Object.keys(cautions)].map((key) => key.replace(/_(one|other)$/, '')),
)

/** Codes as they are made: the first thing that `problem` and `caution` are given, or either of two; notices; refinements of schemas. */
const madeCodes = (): ReadonlySet<string> => {
  const first = Array.from(sources.matchAll(/\b(?:problem|caution)\(([^,()]*)/g), ([, text]) => text ?? '')
  const literals = first.flatMap((text) => Array.from(text.matchAll(/'([a-z]\w*)'/g), ([, code]) => code ?? ''))
  const others = Array.from(
    sources.matchAll(/\bcode: '([a-z]\w*)',\s+params\b|\bparams: \{ code: '([a-z]\w*)'/g),
    ([, notice, refined]) => notice ?? refined ?? '',
  )
  return new Set([...literals, ...others])
}

describe('the entries of help', () => {
  it('stand on every page, each with words of its own and an id that no other has', () => {
    expect(new Set(entries.map(({ page }) => page))).toEqual(new Set(pages))
    expect(new Set(entries.map(({ id }) => id)).size).toBe(entries.length)
    for (const { id, page, title, lines, facts } of entries) {
      expect(pageOf(id)).toBe(page)
      expect([title, ...lines, ...(facts ?? [])].join(' ')).not.toMatch(/\{\{|\$t\(|undefined/)
      expect(title).not.toBe('')
    }
  })

  it('tell of every part of every screen, with three steps', () => {
    const parts = readFileSync(join(root, 'renderer/app/parts.ts'), 'utf8').split('export const parts')[1] ?? ''
    const names = Array.from(parts.matchAll(/(\w+): (?:later|RackScreen)/g), ([, name]) => name)
    expect(names).toContain('stocktake')
    const told = entries.filter(({ page }) => page === 'parts')
    for (const name of names) expect(told.map(({ id }) => id.split('.')[2])).toContain(name)
    for (const { steps } of told) expect(steps).toHaveLength(3)
  })

  it('tell the version and where things are kept, and end the cautions with whose word comes first', () => {
    const text = (id: string) => entries.find((entry) => entry.id === id)?.lines.join(' ')
    expect(text('about.version')).toContain('1.2.3')
    expect(text('about.data')).toContain('/data/own.db')
    expect(text('about.cautions')).toMatch(/your local rules and your supervisor; this program is no substitute\.$/)
  })
})

describe('codes of problems', () => {
  it('have their sentence, each of them', () => {
    const made = madeCodes()
    expect(made.size).toBeGreaterThan(150)
    expect([...made].filter((code) => !codes.has(code))).toEqual([])
  })

  it('are of the program, each of those that have a sentence', () => {
    expect([...codes].filter((code) => !new RegExp(`['"\`]${code}['"\`]|\\b${code}:`).test(sources))).toEqual([])
  })

  it('say what to do: in the sentence itself, or in help', () => {
    const told = entries.filter(({ page }) => page === 'problems')
    expect(told.map(({ id }) => id.slice('problems.'.length)).sort()).toEqual([...codes].sort())
    // A sentence alone says what is so; what to do is a second one, or follows a colon.
    const silent = told.filter(({ title, lines }) => lines.length === 0 && !/[.:] /.test(title))
    expect(silent.map(({ id }) => id)).toEqual([])
    expect(Object.keys(help.todo).filter((code) => !codes.has(code))).toEqual([])
  })
})

describe('searching help', () => {
  it('finds by beginnings of words, in any order, with or without accents and capitals', () => {
    expect(firstFound('free pl')).toBe('words.free play')
    expect(firstFound('PLAY frée')).toBe('words.free play')
    expect(findEntries(index, 'leaf straightedge rock').map(({ id }) => id)).toContain('words.straightedge')
    expect(findEntries(index, 'eaf')).toEqual([])
    expect(findEntries(index, ' ')).toEqual([])
  })

  it('puts first what has the words in its title, and goes over every page', () => {
    const found = findEntries(index, 'projection')
    expect(found[0]?.title).toMatch(/projection/i)
    const pagesFound = new Set(
      ['bar', 'undo', 'disk', 'schedule', 'supervisor', 'springs'].flatMap((word) =>
        findEntries(index, word).map(({ page }) => page),
      ),
    )
    expect(pagesFound).toEqual(new Set(pages))
  })

  it('finds a problem by its code, and by what it said', () => {
    expect(firstFound('restsOnCorner')).toBe('problems.restsOnCorner')
    expect(firstFound('passed between a disk is full')).toBeUndefined()
    expect(firstFound('the disk is full')).toBe('problems.diskFull')
  })
})

describe('pages made from the same words', () => {
  const renewing = 'Out of date: npm run pages writes it anew.'
  it('the README’s table of screens is that of help', () => {
    expect(readReadme(), renewing).toBe(readmeWith(readReadme(), screensTable(t)))
  })

  it('REFERENCE.md is that of help', () => {
    expect(readFileSync(referencePath, 'utf8'), renewing).toBe(referencePage(t))
  })
})
