import { type RefObject, useEffect, useState } from 'react'

/** Size of an element in CSS pixels. */
export interface Box {
  readonly widthPx: number
  readonly heightPx: number
}

/** @returns the size of an element's content, renewed as it changes; `before` until it is laid out */
export const useBox = (element: RefObject<HTMLElement | null>, before: Box): Box => {
  const [box, setBox] = useState(before)
  useEffect(() => {
    if (!element.current) return
    const observer = new ResizeObserver(([entry]) => {
      if (!entry) return
      const { width, height } = entry.contentRect
      setBox({ widthPx: Math.floor(width), heightPx: Math.floor(height) })
    })
    observer.observe(element.current)
    return () => observer.disconnect()
  }, [element])
  return box
}
