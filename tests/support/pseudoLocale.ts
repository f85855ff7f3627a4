import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from '@playwright/test'

const folder = join(import.meta.dirname, '..', '..', 'assets', 'texts', 'en')

/** Words in languages read from right to left or spelt long take a third more room than English ones. */
const LONGER = 0.35
const RIGHT_TO_LEFT_MARK = '\u200f'

/** A text as no language writes it: between brackets that turn round, longer by a third, and read from right to left. */
const pseudo = (text: string): string => {
  const letters = text.replace(/\{\{[^}]*\}\}/g, '').length
  const more = 'אבגד הוזחט '.repeat(1 + letters / 11).slice(0, Math.ceil(letters * LONGER))
  return `${RIGHT_TO_LEFT_MARK}⟦${text}${more && ` ${more}`}⟧${RIGHT_TO_LEFT_MARK}`
}

const turned = (value: unknown): unknown =>
  typeof value === 'string'
    ? pseudo(value)
    : Object.fromEntries(Object.entries(value as object).map(([key, each]) => [key, turned(each)]))

/** The whole English catalogue in words of no language, which are read from right to left. */
const pseudoCatalogue = (): Readonly<Record<string, object>> => {
  const named = readdirSync(folder).map((file) => {
    const words = JSON.parse(readFileSync(join(folder, file), 'utf8'))
    return [file.replace('.json', ''), turned(words) as object] as const
  })
  const catalogue = Object.fromEntries(named)
  return { ...catalogue, common: { ...catalogue.common, direction: 'rtl' } }
}

/** From now on the page is given the pseudo-locale by the same door, where it asks for the German catalogue. */
export const speakBackwards = (page: Page): Promise<unknown> =>
  page.route(/textsDe-.*\.js$/, (route) =>
    route.fulfill({
      contentType: 'text/javascript',
      body: `const words = ${JSON.stringify(pseudoCatalogue())}\nexport { words as german }`,
    }),
  )
