import { create } from 'zustand'
import type { Steel } from '../../geometry/heat.ts'
import { type Strokes, usualStrokes } from '../../geometry/strokes.ts'
import type { EdgeKey } from '../wood/setting.ts'

/** How one iron is to be honed; nothing of it is kept. */
export interface HoningSetting {
  readonly edge: EdgeKey
  /** Null: the tool's own. */
  readonly honedDeg: number | null
  readonly setBackMm: number
  readonly strokes: Strokes
  /** Null: by the tool's own words; unknown: whatever they say. */
  readonly steel: Steel | 'unknown' | null
}

/** A light honing takes a few hundredths off the edge (mm; common practice). */
const USUAL_SET_BACK_MM = 0.02

const usual: HoningSetting = {
  edge: 'wanted',
  honedDeg: null,
  setBackMm: USUAL_SET_BACK_MM,
  strokes: usualStrokes,
  steel: null,
}

const useSettings = create<Readonly<Record<string, HoningSetting>>>()(() => ({}))

/** @returns how a tool is to be honed, in this window */
export const useHoning = (toolId: string): HoningSetting => useSettings((all) => all[toolId] ?? usual)

/** Hones a tool otherwise. */
export const changeHoning = (toolId: string, patch: Partial<HoningSetting>): void =>
  useSettings.setState((all) => ({ [toolId]: { ...(all[toolId] ?? usual), ...patch } }))
