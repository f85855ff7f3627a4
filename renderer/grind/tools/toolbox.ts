import { create } from 'zustand'
import type { RuleEnds, RuleLineName } from './ruleLines.ts'
import { atNought, type Watch } from './stopwatch.ts'

/** The measuring tools, in the order they stand. */
export const toolNames = ['straightedge', 'protractor', 'rule', 'stopwatch'] as const
export type ToolName = (typeof toolNames)[number]

/** Which tools lie beside the model and how they are held; nothing of it belongs to the job. */
interface Toolbox {
  readonly laid: Readonly<Record<ToolName, boolean>>
  /** Of the straightedge: -1 pressed down on the left, 0 balanced, 1 on the right. */
  readonly press: number
  readonly leafMm: number
  /** Where the leaf is tried, -1 at the left corner to 1 at the right. */
  readonly leafShare: number
  readonly ruleLine: RuleLineName
  /** Ends of the rule on each line; where none are set it lies from the line's first mark to its last. */
  readonly ruleEnds: Readonly<Partial<Record<RuleLineName, RuleEnds>>>
  readonly watch: Watch
}

/** As long as the window is open, whichever screen is looked at. */
export const useToolbox = create<Toolbox>()(() => ({
  laid: { straightedge: false, protractor: false, rule: false, stopwatch: false },
  press: 0,
  leafMm: 0.1,
  leafShare: 1,
  ruleLine: 'bevel',
  ruleEnds: {},
  watch: atNought,
}))

/** Lays a tool out, or puts it away as it was held. */
export const layOut = (name: ToolName, on: boolean): void =>
  useToolbox.setState(({ laid }) => ({ laid: { ...laid, [name]: on } }))
