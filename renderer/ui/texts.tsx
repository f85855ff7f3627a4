import type { TFunction } from 'i18next'
import { createContext, type ReactNode, useContext } from 'react'
import type { Problem } from '../../geometry/result.ts'
import { createTexts } from '../../main/contract/texts.ts'

const texts = createTexts()
const TextsContext = createContext<TFunction>(texts.t)

/** Gives every part below it the text catalogue. */
export const Texts = ({ children }: { readonly children: ReactNode }) => (
  <TextsContext value={texts.t}>{children}</TextsContext>
)

/** @returns `t`, for example `t('plan:answer.freePlay')`; the namespace is always named. */
export const useTexts = (): TFunction => useContext(TextsContext)

/** @returns the sentence for a problem; a code without a sentence of its own still gets one. */
export const problemSentence = (t: TFunction, found: Problem): string =>
  t([`problems:${found.code}`, 'problems:invalid'], { ...found.params })
