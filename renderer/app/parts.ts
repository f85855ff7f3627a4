import { lazy } from 'react'
import { RackScreen } from '../rack/RackScreen.tsx'
import type { Screen } from './route.ts'

/** How each part that the first picture does not wait for is read. */
const reads = {
  day: async () => (await import('../day/DayPart.tsx')).DayPart,
  due: async () => (await import('../due/DuePart.tsx')).DuePart,
  errand: async () => (await import('../errand/ErrandPart.tsx')).ErrandPart,
  faults: async () => (await import('../faults/FaultsPart.tsx')).FaultsPart,
  grind: async () => (await import('../grind/grindPart.ts')).grindPart(),
  honing: async () => (await import('../honing/HoningPart.tsx')).HoningPart,
  learnt: async () => (await import('../learnt/LearntPart.tsx')).LearntPart,
  edge: async () => (await import('../measure/MeasureScreen.tsx')).MeasureScreen,
  aim: async () => (await import('../plan/PlanScreen.tsx')).PlanScreen,
  triangle: async () => (await import('../setUp/SetUpScreen.tsx')).SetUpScreen,
  stocktake: async () => (await import('../stocktake/StocktakePart.tsx')).StocktakePart,
  square: async () => (await import('../square/SquarePart.tsx')).SquarePart,
  lessons: async () => (await import('../teach/LessonsPart.tsx')).LessonsPart,
  write: async () => (await import('../teach/write/WritePart.tsx')).WritePart,
  classView: async () => (await import('../teach/class/ClassPart.tsx')).ClassPart,
  people: async () => (await import('../teach/PeoplePart.tsx')).PeoplePart,
  wood: async () => (await import('../wood/WoodPart.tsx')).WoodPart,
} as const satisfies Record<string, () => Promise<React.ComponentType>>

const later = (name: keyof typeof reads) => lazy(async () => ({ default: await reads[name]() }))

/** Reads all parts but the moving model, so that going to a screen does not wait either; for when nothing else is to be done. */
export const readParts = (): void => {
  for (const [name, read] of Object.entries(reads)) if (name !== 'grind') void read()
}

/**
 * Every screen's parts by their names in the address, the first one shown unasked; their words stand under
 * `common:part.<screen>.<part>`. Only the rack is there from the first; the others are read when they are needed.
 */
export const parts: Readonly<Record<Screen, Readonly<Record<string, React.ComponentType>>>> = {
  rack: {
    tools: RackScreen,
    due: later('due'),
    day: later('day'),
    errand: later('errand'),
    stocktake: later('stocktake'),
  },
  plan: { aim: later('aim'), wood: later('wood') },
  setUp: { triangle: later('triangle'), square: later('square') },
  grind: { grind: later('grind') },
  measure: { edge: later('edge'), learnt: later('learnt'), faults: later('faults'), honing: later('honing') },
  teach: { lessons: later('lessons'), people: later('people'), write: later('write'), class: later('classView') },
}

/** @returns the part of a screen that an address names; anything unknown is the first */
export const partOf = (screen: Screen, name: string | null): string => {
  const names = Object.keys(parts[screen])
  return names.find((each) => each === name) ?? (names[0] as string)
}
