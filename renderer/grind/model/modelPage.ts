import german from '../../../geometry/MODEL.de.md?raw'
import english from '../../../geometry/MODEL.md?raw'
import { type Language, language } from '../../../main/contract/language.ts'

const pages: Readonly<Partial<Record<Language, string>>> = { en: english, de: german }

/** @returns the engine's own page in the language spoken, or in English where it is not written in it */
export const modelPage = (): string => pages[language()] ?? english
