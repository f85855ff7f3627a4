import type { TFunction } from 'i18next'
import { createContext, type ReactNode, useContext } from 'react'
import type { Problem } from '../../geometry/result.ts'
import type { Settings } from '../../main/contract/entities.ts'
import { createTexts } from '../../main/contract/texts.ts'
import { useApp } from '../app/store.ts'

const texts = createTexts()

/** Adds a part of the catalogue that is read when it is needed. */
export const addTexts = (namespace: string, words: object): void => void texts.addResourceBundle('en', namespace, words)

/** Writes texts whose figures are in this unit. */
const writerIn = (lengthUnit: Settings['lengthUnit']): TFunction =>
  ((key: string | string[], params?: object) => texts.t(key, { lengthUnit, ...params })) as TFunction

const writers = { mm: writerIn('mm'), inch: writerIn('inch'), thou: writerIn('thou') }
const TextsContext = createContext<TFunction>(writers.mm)

/** Gives every part below it the text catalogue, in the unit that the workshop reads lengths in. */
export const Texts = ({ children }: { readonly children: ReactNode }) => (
  <TextsContext value={writers[useApp((app) => app.settings.lengthUnit)]}>{children}</TextsContext>
)

/** @returns `t`, for example `t('plan:answer.freePlay')`; the namespace is always named. */
export const useTexts = (): TFunction => useContext(TextsContext)

/** @returns the sentence for a problem; a code without a sentence of its own still gets one. */
export const problemSentence = (t: TFunction, found: Problem): string =>
  t([`problems:${found.code}`, 'problems:invalid'], { ...found.params })
