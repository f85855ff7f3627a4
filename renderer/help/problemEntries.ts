import type { TFunction } from 'i18next'
import cautions from '../../assets/texts/en/cautions.json' with { type: 'json' }
import problems from '../../assets/texts/en/problems.json' with { type: 'json' }
import type { Entry } from './entry.ts'

const PLURAL = /_(one|other)$/

/** What is put in when the sentence is said: `{{figures}}`, and other texts. */
const PUT_IN = /\{\{[^}]*\}\}|\$t\([^)]*\)/g

/** @returns the codes that have a sentence, with the key it stands under: of several, the one for many */
const sentences = (texts: object): ReadonlyMap<string, string> =>
  new Map(Object.keys(texts).map((key) => [key.replace(PLURAL, ''), key]))

const catalogues = { problems: sentences(problems), cautions: sentences(cautions) }

const entriesOf = (t: TFunction, namespace: keyof typeof catalogues): readonly Entry[] =>
  Array.from(catalogues[namespace], ([code, key]) => {
    const sentence = t(`${namespace}:${key}`, { skipInterpolation: true }).replace(PUT_IN, '…').replace(/…\.$/, '…')
    const todo = t(`help:todo.${code}`, { defaultValue: '' })
    return {
      page: 'problems',
      id: `problems.${code}`,
      title: sentence,
      lines: todo === '' ? [] : [todo],
      facts: [code],
    }
  })

/** Everything that the program says when something cannot be, or had better not be, as it is: by code. */
export const problemEntries = (t: TFunction): readonly Entry[] => [
  ...entriesOf(t, 'problems'),
  ...entriesOf(t, 'cautions'),
]
