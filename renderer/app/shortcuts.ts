import { type Screen, screens } from './route.ts'

/** Where a shortcut holds: on every screen, or on one. */
export type Where = 'everywhere' | Extract<Screen, 'grind'>

/** One key, or one with Ctrl (Cmd on a Mac), and what it does. */
export interface Shortcut {
  /** Its words stand under `shortcuts:action.<action>`; whoever can do it says so by `useActions`. */
  readonly action: string
  /** As a keyboard event names them: any of these. */
  readonly keys: readonly string[]
  readonly where: Where
  /** With Ctrl or Cmd held. */
  readonly held?: true
  /** Done even while a field is written in or a sheet lies over the window. */
  readonly anywhere?: true
  /** Done again and again while the key is held down. */
  readonly repeats?: true
}

const toScreens = (Object.keys(screens) as Screen[]).map(
  (screen, i): Shortcut => ({ action: `go.${screen}`, keys: [String(i + 1)], where: 'everywhere' }),
)

/** Every shortcut there is, in the order they are listed: the handler and the list both read this. */
export const shortcuts: readonly Shortcut[] = [
  { action: 'help', keys: ['F1'], where: 'everywhere', anywhere: true },
  { action: 'keys', keys: ['?'], where: 'everywhere' },
  ...toScreens,
  { action: 'jobCard', keys: ['c'], where: 'everywhere' },
  { action: 'printCard', keys: ['p'], where: 'everywhere', held: true },
  { action: 'undo', keys: ['z'], where: 'everywhere', held: true },
  { action: 'play', keys: [' '], where: 'grind' },
  { action: 'sweepOn', keys: ['ArrowRight'], where: 'grind', repeats: true },
  { action: 'sweepBack', keys: ['ArrowLeft'], where: 'grind', repeats: true },
  { action: 'stepOn', keys: ['.'], where: 'grind', repeats: true },
  { action: 'stepBack', keys: [','], where: 'grind', repeats: true },
  { action: 'toStart', keys: ['Home'], where: 'grind' },
  { action: 'toEnd', keys: ['End'], where: 'grind' },
  { action: 'faster', keys: ['+', '='], where: 'grind' },
  { action: 'slower', keys: ['-'], where: 'grind' },
  { action: 'again', keys: ['r'], where: 'grind' },
  { action: 'lift', keys: ['l'], where: 'grind' },
  { action: 'viewHome', keys: ['v'], where: 'grind' },
  { action: 'modelBack', keys: ['Escape'], where: 'grind' },
]

/** What matters of a keyboard event. */
export interface Pressed {
  readonly key: string
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly altKey: boolean
  readonly shiftKey: boolean
  readonly repeat: boolean
}

/** What the focused control keeps for itself: all it is given, the keys it moves by, is pressed by, or both, or nothing. */
export type Keeps = 'all' | 'moves' | 'press' | 'both' | 'nothing'

const moves = ['ArrowLeft', 'ArrowRight', 'Home', 'End']

/** A letter, figure or sign alone: what may be switched off for those who speak to their computer or press keys unawares. */
export const isSingleKey = ({ keys, held }: Shortcut): boolean =>
  !held && keys.some((key) => key !== ' ' && key.length === 1)

const isKept = (key: string, keeps: Keeps): boolean =>
  keeps === 'all' ||
  ((keeps === 'moves' || keeps === 'both') && moves.includes(key)) ||
  ((keeps === 'press' || keeps === 'both') && key === ' ')

/** A capital by Shift is another key than its letter; a sign is what it is, whatever it takes to write it. */
const isPressed = ({ keys, held }: Shortcut, { key, ctrlKey, metaKey, altKey, shiftKey }: Pressed): boolean => {
  if ((held === true) !== (ctrlKey || metaKey) || altKey) return false
  if (shiftKey && (key.length > 1 || key === ' ' || /\p{L}/u.test(key))) return false
  return keys.includes(key.length === 1 ? key.toLowerCase() : key)
}

/**
 * The shortcut that a key press means.
 * @param singleKeys whether letters and signs alone count
 * @param can whether an action can be done now
 */
export const shortcutFor = (
  pressed: Pressed,
  keeps: Keeps,
  singleKeys: boolean,
  can: (action: string) => boolean,
): Shortcut | null =>
  shortcuts.find(
    (each) =>
      isPressed(each, pressed) &&
      (each.anywhere || !isKept(pressed.key, keeps)) &&
      (singleKeys || !isSingleKey(each)) &&
      (each.repeats || !pressed.repeat) &&
      can(each.action),
  ) ?? null
