import type { TFunction } from 'i18next'
import { createContext, type ReactNode, useContext } from 'react'
import type { Problem } from '../../geometry/result.ts'
import type { Settings } from '../../main/contract/entities.ts'
import { direction, type Language } from '../../main/contract/language.ts'
import { catalogues, createTexts, speak } from '../../main/contract/texts.ts'
import { useApp } from '../app/store.ts'

const texts = createTexts()

/** Adds a part of the English catalogue that is read when it is needed; another language's is read whole. */
export const addTexts = (namespace: string, words: object): void => void texts.addResourceBundle('en', namespace, words)

/** Has the window speak a language from now on; whatever is shown has to be drawn anew. */
export const speakInWindow = async (language: Language): Promise<void> => {
  await speak(language)
  for (const [namespace, words] of Object.entries(catalogues[language] ?? {}))
    if (!texts.hasResourceBundle(language, namespace)) texts.addResourceBundle(language, namespace, words)
  await texts.changeLanguage(language)
  document.documentElement.lang = language
  document.documentElement.dir = direction()
}

/** Writes texts whose figures are in this unit. */
const writerIn = (lengthUnit: Settings['lengthUnit']): TFunction =>
  ((key: string | string[], params?: object) => texts.t(key, { lengthUnit, ...params })) as TFunction

const writers = { mm: writerIn('mm'), inch: writerIn('inch'), thou: writerIn('thou') }
const TextsContext = createContext<TFunction>(writers.mm)

/** Gives every part below it the text catalogue, in the unit that the workshop reads lengths in; in another language all of it is drawn anew. */
export const Texts = ({ children }: { readonly children: ReactNode }) => {
  const { language, lengthUnit } = useApp((app) => app.settings)
  return (
    <TextsContext key={language} value={writers[lengthUnit]}>
      {children}
    </TextsContext>
  )
}

/** @returns `t`, for example `t('plan:answer.freePlay')`; the namespace is always named. */
export const useTexts = (): TFunction => useContext(TextsContext)

/** @returns the sentence for a problem; a code without a sentence of its own still gets one. */
export const problemSentence = (t: TFunction, found: Problem): string =>
  t([`problems:${found.code}`, 'problems:invalid'], { ...found.params })
