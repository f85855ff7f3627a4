/** A view that can be saved as a picture, with its name in words. */
export interface Pictured {
  readonly name: string
  readonly element: HTMLElement
}

/** Every view is a section of this class under its own heading; what has no heading says its name by `data-picture`. */
const VIEWS = '.grind-view, [data-picture]'

const nameOf = (element: HTMLElement): string =>
  element.dataset.picture ?? element.querySelector('h2')?.textContent ?? element.getAttribute('aria-label') ?? ''

/** What is in sight and can be saved as a picture, in the order of the page. */
export const picturedIn = (root: ParentNode): readonly Pictured[] =>
  Array.from(root.querySelectorAll<HTMLElement>(VIEWS), (element) => ({ name: nameOf(element), element })).filter(
    ({ name, element }) => name !== '' && element.clientWidth > 0,
  )

/** Words as a part of a file's name on every system. */
const forFile = (words: string): string =>
  words
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')

/** @returns a file's name made of its parts, `blade.glb` where none of them leaves a letter */
export const fileName = (parts: readonly string[], ending: string): string =>
  `${parts.map(forFile).filter(Boolean).join('-') || 'blade'}.${ending}`
