import { sectionsOf } from '../grind/model/sections.ts'
import type { Entry } from './entry.ts'

/** The engine's own page, a section an entry. */
export const modelEntries = (page: string): readonly Entry[] =>
  sectionsOf(page).map(({ heading, blocks }) => ({
    page: 'model',
    id: `model.${heading}`,
    title: heading,
    lines: blocks.flatMap(({ lines }) => lines.map((pieces) => pieces.map(({ text }) => text).join(''))),
  }))
