import type { TFunction } from 'i18next'
import { language } from '../../main/contract/language.ts'
import type { Entry } from './entry.ts'

type WordTexts = Readonly<Record<string, { readonly title: string; readonly meaning: string }>>

/** Words of the trade, and the program's own, in the order of the alphabet in whichever language. */
export const wordEntries = (t: TFunction): readonly Entry[] =>
  Object.entries(t('help:word', { returnObjects: true }) as WordTexts)
    .map(([key, { title, meaning }]) => ({ page: 'words' as const, id: `words.${key}`, title, lines: [meaning] }))
    .toSorted((one, other) => one.title.localeCompare(other.title, language()))
