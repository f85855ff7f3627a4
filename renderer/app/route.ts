import { useSyncExternalStore } from 'react'

/** Screens, in the order of the work, each with its name in the address. */
export const screens = {
  rack: 'rack',
  plan: 'plan',
  setUp: 'set-up',
  grind: 'grind',
  measure: 'measure',
  teach: 'teach',
} as const
export type Screen = keyof typeof screens

/** Where the window is: a screen, the code of the tool in hand, and the part of the screen. */
export interface Route {
  readonly screen: Screen
  readonly code: string | null
  /** Null: the screen's first part. */
  readonly part: string | null
}

/** @returns the route of an address's hash; anything unknown is the rack */
export const routeOf = (hash: string): Route => {
  const [, name = '', code = '', part = ''] = /^#([a-z-]*)(?:\/([^/]*))?(?:\/([a-z-]+))?$/.exec(hash) ?? []
  const screen = (Object.keys(screens) as Screen[]).find((key) => screens[key] === name)
  return {
    screen: screen ?? 'rack',
    code: code === '' ? null : decodeURIComponent(code),
    part: part === '' ? null : part,
  }
}

/** @returns the hash for a screen, or a part of it, with a tool in hand */
export const hashFor = (screen: Screen, code: string | null, part: string | null = null): string => {
  const inHand = code === null && part === null ? '' : `/${encodeURIComponent(code ?? '')}`
  return `#${screens[screen]}${inHand}${part === null ? '' : `/${part}`}`
}

const follow = (changed: () => void): (() => void) => {
  addEventListener('hashchange', changed)
  return () => removeEventListener('hashchange', changed)
}

/** @returns the route now, renewed as it changes */
export const useRoute = (): Route => routeOf(useSyncExternalStore(follow, () => location.hash))

/** Goes to a screen. */
export const go = (screen: Screen, code: string | null, part: string | null = null): void => {
  location.hash = hashFor(screen, code, part)
}

/** Says in the address which tool is in hand, without a step in the history. */
export const settle = (screen: Screen, code: string): void => {
  history.replaceState(null, '', hashFor(screen, code))
  dispatchEvent(new HashChangeEvent('hashchange'))
}
