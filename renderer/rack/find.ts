import type { ToolLine } from '../../main/contract/entities.ts'

/** Letters as a person types them in a hurry: no capitals, no accents. */
export const folded = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase()

/** @returns the tools in which every word typed stands somewhere: code, name, kind, place, holder, steel, note */
export const findTools = (
  tools: readonly ToolLine[],
  typed: string,
  kindName: (kind: ToolLine['kind']) => string,
): readonly ToolLine[] => {
  const wanted = folded(typed).split(/\s+/).filter(Boolean)
  return tools.filter((tool) => {
    const { code, name, kind, place, holder, steel, note } = tool
    const text = folded([code, name, kindName(kind), place, holder, steel, note].join(' '))
    return wanted.every((word) => text.includes(word))
  })
}
