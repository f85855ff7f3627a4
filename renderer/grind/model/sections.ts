/** A piece of a line: plain, stressed, or a name from the code. */
export interface Piece {
  readonly kind: 'plain' | 'strong' | 'em' | 'code'
  readonly text: string
}

/** A paragraph, or the points of a list; each a line of pieces. */
export interface Block {
  readonly kind: 'paragraph' | 'list'
  readonly lines: readonly (readonly Piece[])[]
}

/** A heading with what stands under it. */
export interface Section {
  readonly heading: string
  readonly blocks: readonly Block[]
}

const MARKS = [
  ['strong', /^\*\*(.+)\*\*$/],
  ['em', /^_(.+)_$/],
  ['code', /^`(.+)`$/],
] as const

const pieceOf = (text: string): Piece => {
  for (const [kind, mark] of MARKS) {
    const inner = mark.exec(text)?.[1]
    if (inner !== undefined) return { kind, text: inner }
  }
  return { kind: 'plain', text }
}

const piecesOf = (line: string): readonly Piece[] =>
  line
    .split(/(\*\*[^*]+\*\*|\b_[^_]+_\b|`[^`]+`)/)
    .filter((text) => text !== '')
    .map(pieceOf)

const joinedLines = (text: string): string => text.replace(/\s*\n\s*/g, ' ').trim()

const blockOf = (text: string): Block => {
  if (!text.startsWith('- ')) return { kind: 'paragraph', lines: [piecesOf(joinedLines(text))] }
  const points = `\n${text}`.split('\n- ').slice(1)
  return { kind: 'list', lines: points.map((point) => piecesOf(joinedLines(point))) }
}

/**
 * Sections of a plain page: headings of the second order, paragraphs, lists, stress and code; nothing else is known here, and a
 * page that holds anything else fails its test. What stands before the first heading is left out.
 */
export const sectionsOf = (page: string): readonly Section[] =>
  page
    .split(/^## /m)
    .slice(1)
    .map((section) => {
      const [heading = '', ...rest] = section.split('\n')
      const blocks = rest
        .join('\n')
        .split(/\n{2,}/)
        .map((text) => text.trim())
        .filter((text) => text !== '')
      return { heading: heading.trim(), blocks: blocks.map(blockOf) }
    })
