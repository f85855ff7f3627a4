import { describe, expect, it } from 'vitest'
import cautions from '../../assets/texts/en/cautions.json' with { type: 'json' }
import problems from '../../assets/texts/en/problems.json' with { type: 'json' }
import units from '../../assets/texts/en/quantities.json' with { type: 'json' }
import { quantities } from '../../geometry/quantities.ts'
import { createTexts } from '../../main/texts.ts'

const texts = createTexts()
const paths = Object.entries(quantities).flatMap(([section, keys]) =>
  Object.keys(keys).map((key) => `${section}.${key}`),
)
const usedUnits = new Set(Object.values(quantities).flatMap((keys) => Object.values(keys).map(({ unit }) => unit)))

describe('the words of the quantity table', () => {
  it.each(paths)('names %s and says how to measure it', (path) => {
    expect(texts.exists(`quantities:${path}.name`)).toBe(true)
    expect(texts.t(`quantities:${path}.sentence`)).toMatch(/^[A-Z].{20,}\.$/)
  })

  it('names no quantity that is not in the table', () => {
    const { units: _, ...sections } = units
    const named = Object.entries(sections).flatMap(([section, keys]) =>
      Object.keys(keys).map((key) => `${section}.${key}`),
    )
    expect(named.sort()).toEqual([...paths].sort())
  })

  it.each([...usedUnits])('has a word for the unit %s', (unit) => {
    expect(texts.exists(`quantities:units.${unit}`)).toBe(true)
  })
})

const paramsOf = (sentence: string): Record<string, string | number> =>
  Object.fromEntries(
    Array.from(sentence.matchAll(/\{\{(\w+)(,?)/g), ([, key, comma]) => [key as string, comma ? 12.3456 : 'Wood']),
  )

describe.each(Object.entries({ problems, cautions }))('the sentences of %s', (namespace, sentences) => {
  it.each(Object.keys(sentences))('%s is a whole sentence without code names', (code) => {
    const params = paramsOf(sentences[code as keyof typeof sentences])
    const sentence = texts.t(`${namespace}:${code}`, params)
    expect(sentence).toMatch(/^[“A-Z].*[.!]$/)
    expect(sentence).not.toMatch(/[a-z][A-Z]|undefined|null/)
  })
})

describe('figures in sentences', () => {
  it('are rounded and ungrouped, with as many decimals as in a field', () => {
    expect(texts.t('problems:barInsideWheel', { needMm: 1131.04567 })).toContain('at least 1131.0\u00a0mm')
    expect(texts.t('problems:bevelOutOfRange', { bevelDeg: 8.26 })).toContain('8.3°')
    const short = { reliefMm: 0.3149, wantedMm: 0.5 }
    expect(texts.t('cautions:reliefShort', short)).toMatch(/0\.31\u00a0mm .* 0\.50\u00a0mm/)
    // 0.3149 / 0.0254 = 12.40.
    expect(texts.t('cautions:reliefShort', { ...short, lengthUnit: 'thou' })).toMatch(
      /12\.4\u00a0thou .* 19\.7\u00a0thou/,
    )
    expect(texts.t('cautions:reliefShort', { ...short, lengthUnit: 'inch' })).toContain('0.0124\u00a0in')
    expect(texts.t('cautions:turnsBeyondStopTravel', { mostTurns: 12 })).toContain('12\u00a0turns is')
  })
})
