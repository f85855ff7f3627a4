import { lazy } from 'react'
import { MeasureScreen } from '../measure/MeasureScreen.tsx'
import { PlanScreen } from '../plan/PlanScreen.tsx'
import { RackScreen } from '../rack/RackScreen.tsx'
import { SetUpScreen } from '../setUp/SetUpScreen.tsx'
import { SquarePart } from '../square/SquarePart.tsx'
import { WoodPart } from '../wood/WoodPart.tsx'
import type { Screen } from './route.ts'

const GrindScreen = lazy(async () => ({ default: (await import('../grind/GrindScreen.tsx')).GrindScreen }))

const FaultsPart = lazy(async () => ({ default: (await import('../faults/FaultsPart.tsx')).FaultsPart }))
const HoningPart = lazy(async () => ({ default: (await import('../honing/HoningPart.tsx')).HoningPart }))
const LearntPart = lazy(async () => ({ default: (await import('../learnt/LearntPart.tsx')).LearntPart }))
const ErrandPart = lazy(async () => ({ default: (await import('../errand/ErrandPart.tsx')).ErrandPart }))
const StocktakePart = lazy(async () => ({ default: (await import('../stocktake/StocktakePart.tsx')).StocktakePart }))
const DayPart = lazy(async () => ({ default: (await import('../day/DayPart.tsx')).DayPart }))

/**
 * Every screen's parts by their names in the address, the first one shown unasked; their words stand under
 * `common:part.<screen>.<part>`. A part is loaded with its screen, unless it is lazy here.
 */
export const parts: Readonly<Record<Screen, Readonly<Record<string, React.ComponentType>>>> = {
  rack: { tools: RackScreen, day: DayPart, errand: ErrandPart, stocktake: StocktakePart },
  plan: { aim: PlanScreen, wood: WoodPart },
  setUp: { triangle: SetUpScreen, square: SquarePart },
  grind: { grind: GrindScreen },
  measure: { edge: MeasureScreen, learnt: LearntPart, faults: FaultsPart, honing: HoningPart },
}

/** @returns the part of a screen that an address names; anything unknown is the first */
export const partOf = (screen: Screen, name: string | null): string => {
  const names = Object.keys(parts[screen])
  return names.find((each) => each === name) ?? (names[0] as string)
}
