import type { WebFrameMain } from 'electron'

/** The scheme of the program's own pages. */
export const SCHEME = 'camberwright'
/** Where the window's page comes from; nothing else may be loaded as a page. */
export const PAGE_ORIGIN = `${SCHEME}://app`

/** Whether an address is one of the program's own page. */
export const isOwnPage = (url: string): boolean => url.startsWith(`${PAGE_ORIGIN}/`)

/** What the page makes itself, in its own memory. */
const MADE_HERE = [`blob:${PAGE_ORIGIN}/`, 'data:', 'devtools:']

/** Whether what is fetched comes from the program itself. */
export const isOwnAddress = (url: string): boolean =>
  isOwnPage(url) || MADE_HERE.some((beginning) => url.startsWith(beginning))

/** Whether a message comes from the top frame of the program's own page. */
export const isOwnFrame = (frame: Pick<WebFrameMain, 'url' | 'parent'> | null): boolean =>
  frame !== null && frame.parent === null && isOwnPage(frame.url)

/** The page's own address, on the screen and with the tool of another address of it, told that it was started again. */
export const sameScreen = (url: string): string =>
  `${PAGE_ORIGIN}/?after=fault${isOwnPage(url) && URL.canParse(url) ? new URL(url).hash : ''}`
