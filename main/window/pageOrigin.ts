import type { WebFrameMain } from 'electron'

/** The scheme of the program's own pages. */
export const SCHEME = 'camberwright'
/** Where the window's page comes from; nothing else may be loaded as a page. */
export const PAGE_ORIGIN = `${SCHEME}://app`

/** Whether a message comes from the top frame of the program's own page. */
export const isOwnFrame = (frame: Pick<WebFrameMain, 'url' | 'parent'> | null): boolean =>
  frame !== null && frame.parent === null && frame.url.startsWith(`${PAGE_ORIGIN}/`)
