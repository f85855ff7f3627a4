const MARK = 'data-pointed-at'

/** In small windows the whole page scrolls, and going down would take the words that point out of sight. */
const pageScrolls = (): boolean => document.documentElement.scrollHeight > innerHeight

/** Marks the first element of a selector, and brings it into sight, as soon as it is on the screen. @returns what takes the mark off */
export const pointAt = (selector: string): (() => void) => {
  let marked: Element | null = null
  const look = (): void => {
    const found = document.querySelector(selector)
    if (!found || found === marked) return
    marked?.removeAttribute(MARK)
    marked = found
    found.setAttribute(MARK, '')
    if (!pageScrolls()) found.scrollIntoView({ block: 'nearest' })
  }
  const watcher = new MutationObserver(look)
  watcher.observe(document.body, { childList: true, subtree: true })
  look()
  return () => {
    watcher.disconnect()
    marked?.removeAttribute(MARK)
  }
}
