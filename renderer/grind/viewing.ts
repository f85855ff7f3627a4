import { create } from 'zustand'
import { partNames } from '../scene/layers.ts'

/** The views beside the model, in the order they stand. */
export const viewNames = ['pressure', 'glass', 'bevel', 'section', 'back', 'wood'] as const
export type ViewName = (typeof viewNames)[number]

/** What of the model can be taken away to see the rest. */
export const layerNames = [...partNames, 'labels'] as const
export type LayerName = (typeof layerNames)[number]

/** How the model is drawn: as the window's theme has it, always dark, or as lines on white for paper. */
export const lookNames = ['bench', 'dark', 'print'] as const
export type LookName = (typeof lookNames)[number]

/** How the model and its views are looked at; nothing of it belongs to the job. */
export interface Viewing {
  readonly shown: Readonly<Record<ViewName, boolean>>
  /** The view that has taken the model's place, if one has. */
  readonly large: ViewName | null
  readonly hidden: Readonly<Record<LayerName, boolean>>
  readonly look: LookName
  /** Place across the blade that is marked in all views (mm, + right): where the pointer is in one, else the one kept. */
  readonly markedUMm: number | null
  /** The place that was set or tapped, and stays. */
  readonly keptUMm: number | null
}

/** As long as the window is open, whichever screen is looked at. */
export const useViewing = create<Viewing>()(() => ({
  shown: { pressure: true, glass: true, bevel: true, section: false, back: false, wood: false },
  large: null,
  hidden: {
    ...{ wheel: false, fixture: false, bar: false, blade: false },
    ...{ marks: false, fingers: true, shadow: false, labels: false },
  },
  look: 'bench',
  markedUMm: null,
  keptUMm: null,
}))

export const showView = (name: ViewName, on: boolean): void =>
  useViewing.setState(({ shown, large }) => ({
    shown: { ...shown, [name]: on },
    large: on || large !== name ? large : null,
  }))

/** Chooses how the model is drawn. */
export const chooseLook = (look: LookName): void => useViewing.setState({ look })

/** Takes a layer of the model away, or brings it back. */
export const showLayer = (name: LayerName, on: boolean): void =>
  useViewing.setState(({ hidden }) => ({ hidden: { ...hidden, [name]: !on } }))

/** Lets a view take the model's place, or gives it back. */
export const setLarge = (large: ViewName | null): void => useViewing.setState({ large })

/** Marks the place that the pointer is at in a view (mm, + right); null: it has left, and what was kept is marked again. */
export const pointAtPlace = (uMm: number | null): void =>
  useViewing.setState(({ keptUMm }) => ({ markedUMm: uMm ?? keptUMm }))

/** Marks a place across the blade in all views until another is set (mm, + right), or none. */
export const keepPlace = (uMm: number | null): void => useViewing.setState({ markedUMm: uMm, keptUMm: uMm })
