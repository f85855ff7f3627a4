import { type RefObject, useEffect } from 'react'

/**
 * Puts the keyboard's place back where it is lost because the key that was pressed is there no more: a reader of the screen would begin again at its top.
 * @param place takes focus; must be able to (`tabIndex={-1}`)
 * @param when whatever changes as such keys come and go
 */
export const useFocusKept = (place: RefObject<HTMLElement | null>, when: unknown): void => {
  // biome-ignore lint/correctness/useExhaustiveDependencies: it says when to look
  useEffect(() => {
    if (document.activeElement === document.body) place.current?.focus()
  }, [place, when])
}
