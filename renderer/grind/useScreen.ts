import { type RefObject, useEffect, useMemo, useState, useSyncExternalStore } from 'react'
import type { LookName } from './viewing.ts'

/** Size of what an element holds in CSS pixels, renewed as it changes; null before it is laid out. */
export const useSize = (ref: RefObject<HTMLElement | null>): { widthPx: number; heightPx: number } | null => {
  const [size, setSize] = useState<{ widthPx: number; heightPx: number } | null>(null)
  useEffect(() => {
    const element = ref.current
    if (!element) return
    const observer = new ResizeObserver(([entry]) => {
      if (entry)
        setSize({ widthPx: Math.floor(entry.contentRect.width), heightPx: Math.floor(entry.contentRect.height) })
    })
    observer.observe(element)
    return () => observer.disconnect()
  }, [ref])
  return size
}

/** The meanings that the scene and the canvas need as colours; the rest of the screen takes them from the tokens. */
export interface Palette {
  readonly dark: boolean
  readonly touch: string
  readonly ink: string
  readonly steel: string
}

/** Luminance below which a ground counts as dark (sRGB weights, 0 to 255). */
const DARK_BELOW = 110

const isDark = (colour: string): boolean => {
  const [r = 0, g = 0, b = 0] = (colour.match(/[\d.]+/g) ?? []).map(Number)
  return 0.2126 * r + 0.7152 * g + 0.0722 * b < DARK_BELOW
}

const readPalette = (): string => {
  const style = getComputedStyle(document.documentElement)
  const token = (name: string) => style.getPropertyValue(name).trim()
  const ground = getComputedStyle(document.body).backgroundColor
  return JSON.stringify({ dark: isDark(ground), touch: token('--touch'), ink: token('--ink'), steel: token('--steel') })
}

const onPaletteChange = (changed: () => void): (() => void) => {
  const media = matchMedia('(prefers-color-scheme: dark)')
  const observer = new MutationObserver(changed)
  observer.observe(document.documentElement, { attributes: true })
  media.addEventListener('change', changed)
  return () => {
    observer.disconnect()
    media.removeEventListener('change', changed)
  }
}

/** The palette as the tokens give it now, followed through a change of theme. */
export const usePalette = (): Palette => {
  const text = useSyncExternalStore(onPaletteChange, readPalette)
  const [palette, setPalette] = useState<Palette>(() => JSON.parse(text))
  useEffect(() => setPalette(JSON.parse(text)), [text])
  return palette
}

/** The palette of a look: the window's own, or that of a part of the window with the look's tokens. */
export const useLookPalette = (look: LookName, window: Palette): Palette =>
  useMemo(() => {
    if (look === 'bench') return window
    const probe = document.createElement('div')
    probe.dataset.look = look
    document.body.append(probe)
    const style = getComputedStyle(probe)
    const token = (name: string) => style.getPropertyValue(name).trim()
    const palette = { dark: look === 'dark', touch: token('--touch'), ink: token('--ink'), steel: token('--steel') }
    probe.remove()
    return palette
  }, [look, window])

const REDUCED = '(prefers-reduced-motion: reduce)'

const onReducedChange = (changed: () => void): (() => void) => {
  const media = matchMedia(REDUCED)
  media.addEventListener('change', changed)
  return () => media.removeEventListener('change', changed)
}

/** Whether the system asks for as little motion as can be. */
export const useReducedMotion = (): boolean => useSyncExternalStore(onReducedChange, () => matchMedia(REDUCED).matches)
