import type { i18n, TFunction } from 'i18next'
import card from '../assets/texts/en/card.json' with { type: 'json' }
import command from '../assets/texts/en/command.json' with { type: 'json' }
import hosts from '../assets/texts/en/hosts.json' with { type: 'json' }
import worksheet from '../assets/texts/en/worksheet.json' with { type: 'json' }
import { FIRST_LANGUAGE, language } from './contract/language.ts'
import { createTexts as createSharedTexts } from './contract/texts.ts'

/** What papers, system boxes and the command line say, and no window does: its first picture does not wait for these words. */
const ours = { card, command, hosts, worksheet }

/** @returns the whole catalogue in the language spoken, ready; no waiting */
export const createTexts = (): i18n => {
  const texts = createSharedTexts()
  for (const [namespace, words] of Object.entries(ours)) texts.addResourceBundle(FIRST_LANGUAGE, namespace, words)
  return texts
}

/** The texts for whatever outlives a change of the language, such as a menu: each in the language that is spoken then. */
export const liveTexts = (): TFunction => {
  let spoken = language()
  let { t } = createTexts()
  const live = (...args: Parameters<TFunction>) => {
    if (spoken !== language()) {
      spoken = language()
      t = createTexts().t
    }
    return t(...args)
  }
  return live as TFunction
}
