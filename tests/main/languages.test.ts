import { randomUUID } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { figure, joined } from '../../main/contract/figures.ts'
import { languageOfLocale, languages } from '../../main/contract/language.ts'
import { catalogues, speak } from '../../main/contract/texts.ts'
import { readFigure } from '../../main/contract/typedFigure.ts'
import { builtInLessons } from '../../main/lessons/builtIn.ts'
import { startServices } from '../../main/serviceClient.ts'
import { createTexts, liveTexts } from '../../main/texts.ts'
import { found } from '../geometry/example.ts'
import { temporaryFolder, toolDraft } from './support.ts'

const folder = join(import.meta.dirname, '..', '..', 'assets', 'texts')
const lessonFolder = join(import.meta.dirname, '..', '..', 'assets', 'lessons')
const others = languages.filter((language) => language !== 'en')

/** Every text of a catalogue by its key, `common:side.left`. */
const textsIn = (language: string): ReadonlyMap<string, string> => {
  const found = new Map<string, string>()
  const gather = (value: unknown, path: string): void => {
    if (typeof value === 'string') found.set(path, value)
    else
      for (const [key, each] of Object.entries(value as object))
        gather(each, `${path}${path.endsWith(':') ? '' : '.'}${key}`)
  }
  for (const name of readdirSync(join(folder, language)))
    gather(JSON.parse(readFileSync(join(folder, language, name), 'utf8')), `${name.replace('.json', '')}:`)
  return found
}

const english = textsIn('en')
/** Words that are the same in every language of the program, and names. */
const shared = new Set(
  'in mm thou MB min sin cos null Letter WebM MP Camberwright Name ltr Plan EN DE System'.split(' '),
)
/** What is put into a text, with how it is written: `reliefMm, length(decimals: 2)`. */
const filledIn = (text: string): readonly string[] =>
  Array.from(text.matchAll(/\{\{\s*([^}]*?)\s*\}\}/g), ([, inside]) => inside as string).sort()

describe.each(others)('the texts in %s', (language) => {
  const theirs = textsIn(language)

  it('are those of the program, none more', () => {
    expect([...theirs.keys()].filter((key) => !english.has(key))).toEqual([])
  })

  it('are all read where it is spoken', async () => {
    await speak(language)
    await speak('en')
    const files = readdirSync(join(folder, language)).map((name) => name.replace('.json', ''))
    expect(Object.keys(catalogues[language] ?? {}).sort()).toEqual(files.sort())
  })

  it('are all there', () => {
    expect([...english.keys()].filter((key) => !theirs.has(key))).toEqual([])
  })

  it('have the same things put in, written alike', () => {
    const unlike = [...theirs].filter(([key, text]) => {
      const plural = /_(one|other)$/.test(key)
      const [ours, others] = [filledIn(english.get(key) ?? ''), filledIn(text)]
      // “One sweep” may or may not name its figure, in either language.
      const known = plural ? ours.concat('count') : ours
      return plural ? others.some((each) => !known.includes(each)) : ours.join() !== others.join()
    })
    expect(unlike.map(([key]) => key)).toEqual([])
  })

  it('have every form that their numbers take', () => {
    const forms = new Intl.PluralRules(language).resolvedOptions().pluralCategories
    const counted = [...theirs.keys()].filter((key) => key.endsWith('_other')).map((key) => key.replace('_other', ''))
    expect(counted.length).toBeGreaterThan(0)
    const wanted = counted.flatMap((key) => forms.map((form) => `${key}_${form}`))
    expect(wanted.filter((key) => !theirs.has(key))).toEqual([])
  })

  it('are not English ones left as they are, but for what is the same in both', () => {
    const words = (text: string) => text.replace(/\{\{[^}]*\}\}/g, '').match(/\p{L}{2,}/gu) ?? []
    const alike = [...theirs].filter(
      ([key, text]) => english.get(key) === text && words(text).some((word) => !shared.has(word)),
    )
    expect(alike.map(([key]) => key)).toEqual([])
  })
})

describe('lessons in another language', () => {
  const lessonsOf = (language: string) =>
    readdirSync(join(lessonFolder, language)).filter((name) => name.endsWith('.json'))
  const read = (path: string): Record<string, unknown> => JSON.parse(readFileSync(path, 'utf8'))
  /** The document without its words: everything that is worked with. */
  const bare = (value: unknown, key = ''): unknown => {
    if (Array.isArray(value)) return key === 'text' || key === 'hints' ? value.length : value.map((each) => bare(each))
    if (typeof value !== 'object' || value === null)
      return ['title', 'about', 'heading', 'text', 'question', 'right', 'wrong', 'notes'].includes(key) ? '' : value
    return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, bare(each, name)]))
  }

  it.each(others.flatMap((language) => lessonsOf(language).map((name) => [language, name] as const)))(
    'in %s, %s is the same lesson but for its words',
    (language, name) => {
      const ours = read(join(lessonFolder, name))
      const theirs = read(join(lessonFolder, language, name))
      expect(bare(theirs)).toEqual(bare(ours))
      const refs = (document: unknown) => filledIn(JSON.stringify(document))
      expect(refs(theirs)).toEqual(refs(ours))
    },
  )

  it('are given where that language is spoken, all of them, in their order', async () => {
    const ids = builtInLessons().map(({ id }) => id)
    const titles = builtInLessons().map(({ title }) => title)
    await speak('de')
    expect(builtInLessons().map(({ id }) => id)).toEqual(ids)
    expect(builtInLessons().filter(({ title }, k) => title === titles[k])).toEqual([])
    await speak('en')
  })
})

describe('German', () => {
  beforeAll(() => speak('de'))
  afterAll(() => speak('en'))

  it.each([
    [1234.5, 'mm', 1, 'mm', '1234,5\u00a0mm'],
    [-0.25, 'mm', 2, 'mm', '−0,25\u00a0mm'],
    [25.4, 'mm', 1, 'inch', '1,000\u00a0in'],
    [25, 'deg', 1, 'mm', '25,0°'],
    [2, 'turn', 2, 'mm', '2\u00a0Umdrehungen'],
    [0.5, 'turn', 2, 'mm', '0,5\u00a0Umdrehung'],
    [90, 'rpm', 0, 'mm', '90\u00a0U/min'],
  ] as const)('writes %d %s as it is written there', (value, unit, decimals, lengthUnit, said) => {
    expect(joined(figure(value, unit, decimals, lengthUnit))).toBe(said)
  })

  it('reads back what it writes, and what English hands type', () => {
    for (const [typed, unit, value] of [
      ['0,5 mm', 'mm', 0.5],
      ['0.5', 'mm', 0.5],
      ['2 1/4 Zoll', 'mm', 57.15],
      ['1,5 Umdrehungen', 'turn', 1.5],
      ['25 Grad', 'deg', 25],
      ['120 Züge', 'sweep', 120],
    ] as const)
      expect(readFigure(typed, unit, 'mm')).toEqual({ ok: true, value })
  })

  it('counts as its plural does, and writes figures in sentences with its comma', () => {
    const { t } = createTexts()
    expect(t('cautions:reliefShort', { reliefMm: 0.254, wantedMm: 0.5 })).toContain(`0,25\u00a0mm`)
    const [one, many] = [1, 2].map((count) => t('rack:standing.tools', { count }))
    expect(one).not.toBe(many)
  })

  it('is spoken at once by what outlives the change', async () => {
    const t = liveTexts()
    const german = t('common:screen.grind')
    await speak('en')
    expect(t('common:screen.grind')).not.toBe(german)
    await speak('de')
    expect(t('common:screen.grind')).toBe(german)
  })
})

describe('the language of a workshop', () => {
  it('is that of the system where it is one of ours, else English', () => {
    expect(['de-AT', 'de', 'DE-CH', 'en-US', 'fr-FR', ''].map((locale) => languageOfLocale(locale))).toEqual([
      'de',
      'de',
      'de',
      'en',
      'en',
      'en',
    ])
  })

  it('is kept, and irons are found by what their kind is called in it, also after an undo', async () => {
    const place = temporaryFolder()
    const client = await startServices({ dataDir: place.folder, who: 'tester' })
    const ask = async (name: string, input: unknown) => found(await client.call(name, input, randomUUID()))
    const foundBy = async (search: string) =>
      ((await ask('tool.find', { search })) as { tools: { kind: string }[] }).tools.map(({ kind }) => kind)
    await ask('workshop.open', { rack: 'own' })
    await ask('tool.add', { ...toolDraft, name: 'Ash' })
    expect([await foundBy('abrichthobel'), await foundBy('try plane')]).toEqual([[], ['try']])
    const settings = await ask('settings.get', {})
    await ask('settings.edit', { ...(settings as object), language: 'de' })
    expect([await foundBy('abrichthobel'), await foundBy('try plane')]).toEqual([['try'], []])
    await ask('change.undo', {})
    expect(await foundBy('try plane')).toEqual(['try'])
    await client.close()
    place.remove()
  })
})
