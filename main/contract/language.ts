/** Languages that the program speaks. A new one is a line here, a catalogue in `assets/texts`, lessons in `assets/lessons`, and a reader in texts.ts. */
export const languages = ['en', 'de'] as const
export type Language = (typeof languages)[number]

/** What stands in where a language has no word of its own. */
export const FIRST_LANGUAGE: Language = 'en'

/** As dates, times and the order of names go by it. */
export const localeOf: Readonly<Record<Language, string>> = { en: 'en-GB', de: 'de-DE' }

export type Direction = 'ltr' | 'rtl'

let spoken: Language = FIRST_LANGUAGE
let read: Direction = 'ltr'

/** @returns the language of this thread: a window, a worker and the maker each speak one, as they have one clock and one zone */
export const language = (): Language => spoken

/** @returns which way its words are read */
export const direction = (): Direction => read

/** Words and figures are written in it from now on; its catalogue has to be known (`speak` in texts.ts sees to that). */
export const setLanguage = (wanted: Language, way: Direction): void => {
  spoken = wanted
  read = way
}

/** @param locale as the system tells it, such as `de-AT`; left out: this machine's. @returns the program's language nearest to it */
export const languageOfLocale = (locale = new Intl.DateTimeFormat().resolvedOptions().locale): Language =>
  languages.find((each) => locale.toLowerCase().startsWith(each)) ?? FIRST_LANGUAGE
