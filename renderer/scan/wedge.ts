import { MARK, type ReadCode, readMark } from '../../main/contract/codes.ts'

/**
 * Longest pause between two signs of a reader that plays keyboard (ms). Readers send one every 1 to 20 ms, slow ones over radio every
 * 30; the quickest typists need 60 and more from key to key, and longer from a capital to a colon.
 */
export const READER_PAUSE_MS = 40

/** What matters of a key press; `timeMs` is when the system had it, however busy the window was. */
export interface WedgeKey {
  readonly key: string
  readonly code: string
  readonly shiftKey: boolean
  readonly timeMs: number
}

/** What a key press was: nothing of a reader's, a key held along with a sign, maybe part of a mark, or the end of one. */
export type Heard =
  | { readonly kind: 'other' | 'along' }
  | { readonly kind: 'part'; readonly first: boolean }
  | { readonly kind: 'mark'; readonly read: ReadCode }

/** What readers end with; Enter is how they come. */
const ENDS = ['Enter', 'Tab']
/** Pressed along with a sign. */
const HELD = ['Shift', 'CapsLock']

/**
 * The sign of a key on the keyboard that readers come set to, that of the United States: with another one chosen in the system, the signs
 * that arrive are others, the keys are not.
 */
const signOfKey = ({ code, shiftKey }: WedgeKey): string => {
  const [, letter] = /^Key([A-Z])$/.exec(code) ?? []
  const [, digit] = /^Digit(\d)$/.exec(code) ?? []
  if (letter !== undefined) return letter
  if (digit !== undefined) return digit
  return { Semicolon: shiftKey ? ':' : ';', Slash: '/' }[code] ?? '\0'
}

const mayBeMark = (text: string): boolean => MARK.startsWith(text) || text.startsWith(MARK)

/** Finds marks in the stream of key presses: quick ones that begin as a mark does, up to Enter. */
export const createWedge = () => {
  let signs = ''
  let keys = ''
  let lastMs = Number.NEGATIVE_INFINITY
  const forget = (): void => {
    signs = ''
    keys = ''
  }
  const add = (pressed: WedgeKey): Heard => {
    const first = signs === ''
    signs += pressed.key.toUpperCase()
    keys += signOfKey(pressed)
    if (mayBeMark(signs) || mayBeMark(keys)) return { kind: 'part', first }
    forget()
    // What broke a beginning may itself begin anew.
    return first ? { kind: 'other' } : add(pressed)
  }
  const end = (): Heard => {
    const read = readMark(signs) ?? readMark(keys)
    forget()
    return read === null ? { kind: 'other' } : { kind: 'mark', read }
  }
  const hear = (pressed: WedgeKey): Heard => {
    if (HELD.includes(pressed.key)) return { kind: 'along' }
    if (pressed.timeMs - lastMs > READER_PAUSE_MS) forget()
    lastMs = pressed.timeMs
    if (ENDS.includes(pressed.key)) return end()
    if (pressed.key.length === 1) return add(pressed)
    forget()
    return { kind: 'other' }
  }
  return { hear }
}
