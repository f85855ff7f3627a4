import type { TFunction } from 'i18next'
import type { CallOutput } from '../../main/contract/calls.ts'
import type { Entry } from './entry.ts'

type AboutTexts = Readonly<Record<string, { readonly title: string; readonly lines: readonly string[] }>>

/** The cautions as they are taught, and whose word goes before the program's. */
const cautions = (t: TFunction): readonly string[] => [
  ...Object.values(t('teach:caution.list', { returnObjects: true }) as Record<string, string>),
  t('teach:rules'),
]

/** The program itself: version, what is kept where, cautions. @param about null until the host has told it */
export const aboutEntries = (t: TFunction, about: CallOutput<'workshop.about'> | null): readonly Entry[] =>
  Object.entries(
    t('help:about', { returnObjects: true, version: '', engine: '', file: '', copies: '', ...about }) as AboutTexts,
  ).map(
    ([key, { title, lines }]): Entry => ({
      page: 'about',
      id: `about.${key}`,
      title,
      lines: key === 'cautions' ? [...lines, ...cautions(t)] : lines,
      ...(key === 'faults' && { act: 'reports' }),
    }),
  )
