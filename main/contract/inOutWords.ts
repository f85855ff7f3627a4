import type { TFunction } from 'i18next'
import type { Counts, Fault } from './inOut.ts'

/** What comes of a file that is brought in, in words, alike on screen and on the command line. */

const fates = ['added', 'changed', 'back', 'same', 'faulty'] as const

/** @returns what becomes of the records of one noun: “41 new, 3 changed” */
export const countsInWords = (t: TFunction, counts: Counts): string => {
  const told = fates.filter((fate) => counts[fate] > 0).map((fate) => t(`inOut:in.${fate}`, { count: counts[fate] }))
  return told.length === 0 ? t('inOut:in.nothing') : told.join(', ')
}

/** @returns the same of all nouns in one sentence's part */
export const allInWords = (t: TFunction, counts: readonly Counts[]): string =>
  counts
    .map((each) =>
      counts.length === 1 ? countsInWords(t, each) : `${t(`inOut:many.${each.noun}`)}: ${countsInWords(t, each)}`,
    )
    .join('; ')

/** @param several whether the file holds more than one noun. @returns where a fault stands */
export const placeInWords = (t: TFunction, { noun, row, column }: Fault, several: boolean): string => {
  if (several) return t('inOut:in.faultOfNoun', { noun: t(`inOut:many.${noun}`), row, column: column || '–' })
  return column === '' ? t('inOut:in.faultRow', { row }) : t('inOut:in.fault', { row, column })
}

/** @returns whether anything would be written */
export const wouldWrite = (counts: readonly Counts[]): boolean =>
  counts.some(({ added, changed, back }) => added + changed + back > 0)
