import type { Screen } from '../app/route.ts'

/** Pages of help, in the order they stand. */
export const pages = ['parts', 'words', 'quantities', 'keys', 'jobFile', 'problems', 'model', 'about'] as const
export type Page = (typeof pages)[number]

/** One thing that help tells of. */
export interface Entry {
  readonly page: Page
  /** `<page>.<name>`, for links. */
  readonly id: string
  readonly title: string
  /** The heading that it stands under; left out where its page has none. */
  readonly group?: string
  readonly lines: readonly string[]
  /** What to do, one after the other. */
  readonly steps?: readonly string[]
  /** Unit, range and the like, in a few words each. */
  readonly facts?: readonly string[]
  /** The sheet that it leads to, by its action. */
  readonly act?: 'reports'
  /** Where in the program it is. */
  readonly place?: { readonly screen: Screen; readonly part: string | null }
}

/** @returns the page of an entry's id; the first for anything unknown */
export const pageOf = (id: string): Page => pages.find((page) => id.startsWith(`${page}.`)) ?? 'parts'
