import type { LabelNoun } from '../../../main/contract/codes.ts'
import type { LabelItem } from '../../../main/contract/labels.ts'
import { type App, useApp } from '../../app/store.ts'

/** Something that can have a label. */
export interface LabelLine extends LabelItem {
  readonly code: string
  readonly name: string
}

const listOf: Readonly<Record<LabelNoun, (app: App) => readonly Omit<LabelLine, 'noun'>[]>> = {
  tool: (app) => app.tools,
  station: (app) => app.stations,
  fixture: (app) => app.fixtures,
}

/** @returns everything on the rack that can have a label, stations and fixtures after the tools */
export const useLines = (): readonly LabelLine[] => {
  useApp((app) => app.tools)
  useApp((app) => app.stations)
  useApp((app) => app.fixtures)
  const app = useApp.getState()
  return (Object.keys(listOf) as LabelNoun[]).flatMap((noun) =>
    listOf[noun](app).map(({ id, code, name }) => ({ noun, id, code, name })),
  )
}

const folded = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase()

/** @returns the lines in which every word typed stands in code or name */
export const findLines = (lines: readonly LabelLine[], typed: string): readonly LabelLine[] => {
  const words = folded(typed).split(/\s+/).filter(Boolean)
  return lines.filter(({ code, name }) => words.every((word) => folded(`${code} ${name}`).includes(word)))
}
