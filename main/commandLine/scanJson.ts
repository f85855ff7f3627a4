/** What a reader of JSON lets pass in silence, and where it gives up. Places are dotted paths, as in problems. */
export interface JsonScan {
  /** Index of the first sign that cannot stand where it does or is too deep; the text's length where it ends too early; null: none. */
  readonly breaksAt: number | null
  /** Entries written more than once, of which a reader would keep just the last. */
  readonly repeated: readonly string[]
  /** Figures too large to be held, which a reader would take for infinite. */
  readonly beyond: readonly string[]
  /** Groups with more entries than any job has. */
  readonly crowded: readonly string[]
}

/** A job's largest group has a dozen entries; each one too many would become a reason of its own. */
const MOST_ENTRIES = 1000

/** A job is four brackets deep; whoever goes far below that has not closed one, and need not be followed. */
const MOST_DEPTH = 64

/** One sign of JSON after the white space that JSON knows: a bracket or mark, a text, a figure or a word. */
const sign =
  /[ \t\r\n]*(?:([{}[\],:])|("[^"\\]*(?:\\.[^"\\]*)*")|(-?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null))/suy

/** What may stand next. */
type Wanted = 'value' | 'valueOrEnd' | 'key' | 'keyOrEnd' | 'colon' | 'commaOrEnd' | 'nothing'

/** An open bracket: the keys seen in it, or null for a list, and the entry being read. */
interface Group {
  readonly keys: Set<string> | null
  entry: string | number
}

const isValueWanted = (wanted: Wanted): boolean => wanted === 'value' || wanted === 'valueOrEnd'
const isKeyWanted = (wanted: Wanted): boolean => wanted === 'key' || wanted === 'keyOrEnd'

/** Follows the brackets of one text. Each step returns whether its sign may stand where it does. */
const createReader = () => {
  const groups: Group[] = []
  const repeated = new Set<string>()
  const beyond: string[] = []
  const crowded: string[] = []
  let wanted: Wanted = 'value'

  const place = (): string => groups.map(({ entry }) => entry).join('.')
  const ended = (): true => {
    wanted = groups.length === 0 ? 'nothing' : 'commaOrEnd'
    return true
  }
  const opened = (mark: string): boolean => {
    if (!isValueWanted(wanted) || groups.length === MOST_DEPTH) return false
    groups.push({ keys: mark === '{' ? new Set() : null, entry: mark === '{' ? '' : 0 })
    wanted = mark === '{' ? 'keyOrEnd' : 'valueOrEnd'
    return true
  }
  const closed = (mark: string): boolean => {
    const isObject = groups.at(-1)?.keys != null
    const mayEnd = wanted === 'commaOrEnd' || wanted === (isObject ? 'keyOrEnd' : 'valueOrEnd')
    if (groups.length === 0 || !mayEnd || isObject !== (mark === '}')) return false
    groups.pop()
    return ended()
  }
  const comma = (): boolean => {
    const group = groups.at(-1)
    if (group === undefined || wanted !== 'commaOrEnd') return false
    if (typeof group.entry === 'number') group.entry += 1
    wanted = group.keys === null ? 'value' : 'key'
    return true
  }
  const colon = (): boolean => {
    if (wanted !== 'colon') return false
    wanted = 'value'
    return true
  }
  const key = (text: string): true => {
    const group = groups.at(-1) as Group
    if (group.keys?.size === MOST_ENTRIES) crowded.push(place())
    group.entry = text
    if (group.keys?.has(text)) repeated.add(place())
    group.keys?.add(text)
    wanted = 'colon'
    return true
  }
  const steps: Readonly<Record<string, (mark: string) => boolean>> = {
    '{': opened,
    '[': opened,
    '}': closed,
    ']': closed,
    ',': comma,
    ':': colon,
  }
  return {
    mark: (mark: string): boolean => steps[mark]?.(mark) ?? false,
    text: (quoted: string): boolean => {
      if (isKeyWanted(wanted)) return key(unquoted(quoted))
      return isValueWanted(wanted) && ended()
    },
    scalar: (word: string): boolean => {
      if (!isValueWanted(wanted)) return false
      if (Math.abs(Number(word)) === Number.POSITIVE_INFINITY) beyond.push(place())
      return ended()
    },
    isWhole: (): boolean => wanted === 'nothing',
    found: () => ({ repeated: [...repeated], beyond, crowded }),
  }
}

/** A text that is not rightly written stands for itself: the reader of JSON refuses it in any case. */
const unquoted = (quoted: string): string => {
  try {
    return JSON.parse(quoted) as string
  } catch {
    return quoted
  }
}

/** Reads a text sign by sign, with no recursion, so that no depth of brackets can exhaust it. */
export const scanJson = (text: string): JsonScan => {
  const reader = createReader()
  const end = text.replace(/[ \t\r\n]+$/u, '').length
  let at = 0
  while (at < end) {
    sign.lastIndex = at
    const [whole, mark, quoted, word] = sign.exec(text) ?? []
    const stands =
      (mark !== undefined && reader.mark(mark)) ||
      (quoted !== undefined && reader.text(quoted)) ||
      (word !== undefined && reader.scalar(word))
    if (!stands) return { breaksAt: at + leadingSpace(text, at), ...reader.found() }
    at += whole?.length ?? 0
  }
  return { breaksAt: reader.isWhole() ? null : text.length, ...reader.found() }
}

const space = /[ \t\r\n]*/uy

const leadingSpace = (text: string, at: number): number => {
  space.lastIndex = at
  return space.exec(text)?.[0].length ?? 0
}
