import { create } from 'zustand'
import { type LabelSheet, labelSheets, positionCount } from '../../../main/contract/labelSheets.ts'
import type { LabelItem } from '../../../main/contract/labels.ts'

interface Labels {
  /** What the sheet was opened for; null: it is closed. */
  readonly items: readonly LabelItem[] | null
  /** The sheet of labels used last since the window was opened, and its first free position, 1 or more. */
  readonly sheet: LabelSheet
  readonly first: number
}

/** The labels being made; the sheet in the printer is remembered from one time to the next. */
export const useLabels = create<Labels>()(() => ({ items: null, sheet: labelSheets[0], first: 1 }))

/** Opens the sheet that makes labels. @param items what is ticked to begin with */
export const openLabels = (items: readonly LabelItem[]): void => useLabels.setState({ items })

export const closeLabels = (): void => useLabels.setState({ items: null })

/** Takes another sheet; one that was not begun starts at its first label. */
export const takeSheet = (sheet: LabelSheet): void => useLabels.setState({ sheet, first: 1 })

export const startAt = (first: number): void => useLabels.setState({ first })

/** @returns the first free position after so many labels, on the sheet that they end on */
export const nextFirst = (sheet: LabelSheet, first: number, count: number): number =>
  ((first - 1 + count) % positionCount(sheet)) + 1
