import { useMemo } from 'react'
import type { LabelNoun } from '../../../main/contract/codes.ts'
import type { LabelItem } from '../../../main/contract/labels.ts'
import { placePath } from '../../../main/contract/placePath.ts'
import { useApp } from '../../app/store.ts'
import { folded } from './folded.ts'

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
  const places = useApp((app) => app.places)
  const all = useMemo(
    () => [
      ...linesOf('tool', tools),
      ...linesOf('station', stations),
      ...linesOf('fixture', fixtures),
      ...linesOf(
        'place',
        places.map((place) => ({ ...place, name: placePath(places, place.id) })),
      ),
    ],
    [tools, stations, fixtures, places],
  )
  const ids = new Set(asked.map(({ id }) => id))
  return [...all.filter(({ id }) => ids.has(id)), ...all.filter(({ id }) => !ids.has(id))]
}

const linesOf = (noun: LabelNoun, records: readonly Omit<LabelLine, 'noun'>[]): readonly LabelLine[] =>
  records.map(({ id, code, name }) => ({ noun, id, code, name }))

/** @returns the lines in which every word typed stands in code or name */
export const findLines = (lines: readonly LabelLine[], typed: string): readonly LabelLine[] => {
  const words = folded(typed).split(/\s+/).filter(Boolean)
  return lines.filter(({ code, name }) => words.every((word) => folded(`${code} ${name}`).includes(word)))
}
