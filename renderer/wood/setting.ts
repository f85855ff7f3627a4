import { create } from 'zustand'
import { quantities } from '../../geometry/quantities.ts'

/** Edges that can be looked at: as wanted, as the grind would leave it, as last measured after grinding or honing. */
export const edgeKeys = ['wanted', 'predicted', 'asGround', 'asHoned'] as const
export type EdgeKey = (typeof edgeKeys)[number]

/** How one iron is being looked at; nothing of it is kept. */
export interface WoodSetting {
  readonly edge: EdgeKey
  /** Null: the job's thickest shaving. */
  readonly depthMm: number | null
  readonly leverDeg: number
  readonly skewDeg: number
  /** Null: one pass alone. */
  readonly stepMm: number | null
  readonly boardMm: number
  readonly stockMm: number
  readonly shiftMm: number
}

const { boardMm, stockMm } = quantities.wood

export const asItLies: WoodSetting = {
  edge: 'wanted',
  depthMm: null,
  leverDeg: 0,
  skewDeg: 0,
  stepMm: null,
  boardMm: boardMm.defaultValue ?? boardMm.min,
  stockMm: stockMm.defaultValue ?? stockMm.min,
  shiftMm: 0,
}

const useSettings = create<Readonly<Record<string, WoodSetting>>>()(() => ({}))

/** @returns how a tool's edge is being looked at in this window */
export const useWoodSetting = (toolId: string): WoodSetting => useSettings((all) => all[toolId] ?? asItLies)

/** Looks at a tool's edge otherwise. */
export const changeWood = (toolId: string, patch: Partial<WoodSetting>): void =>
  useSettings.setState((all) => ({ [toolId]: { ...(all[toolId] ?? asItLies), ...patch } }))
