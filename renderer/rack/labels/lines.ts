import { useMemo } from 'react'
import type { LabelNoun } from '../../../main/contract/codes.ts'
import type { LabelItem } from '../../../main/contract/labels.ts'
import { useApp } from '../../app/store.ts'

/** Something that can have a label. */
export interface LabelLine extends LabelItem {
  readonly code: string
  readonly name: string
}

/** @param asked what the sheet was opened for: it stands first @returns everything on the rack that can have a label */
export const useLines = (asked: readonly LabelItem[]): readonly LabelLine[] => {
  const tools = useApp((app) => app.tools)
  const stations = useApp((app) => app.stations)
  const fixtures = useApp((app) => app.fixtures)
  const all = useMemo(
    () => [...of('tool', tools), ...of('station', stations), ...of('fixture', fixtures)],
    [tools, stations, fixtures],
  )
  const ids = new Set(asked.map(({ id }) => id))
  return [...all.filter(({ id }) => ids.has(id)), ...all.filter(({ id }) => !ids.has(id))]
}

const of = (noun: LabelNoun, records: readonly Omit<LabelLine, 'noun'>[]): readonly LabelLine[] =>
  records.map(({ id, code, name }) => ({ noun, id, code, name }))

const folded = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase()

/** @returns the lines in which every word typed stands in code or name */
export const findLines = (lines: readonly LabelLine[], typed: string): readonly LabelLine[] => {
  const words = folded(typed).split(/\s+/).filter(Boolean)
  return lines.filter(({ code, name }) => words.every((word) => folded(`${code} ${name}`).includes(word)))
}
