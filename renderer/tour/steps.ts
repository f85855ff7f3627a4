import type { Screen } from '../app/route.ts'

/** A step of the walk: the part it goes to, and what it points at there. */
export interface TourStep {
  /** Its words stand under `help:tour.step.<name>`. */
  readonly name: 'rack' | 'plan' | 'setUp' | 'grind' | 'measure' | 'learnt'
  readonly screen: Screen
  readonly part: string | null
  /** A selector; the first that is there. */
  readonly target: string
}

/** The walk, in the order of the work. */
export const tourSteps: readonly TourStep[] = [
  { name: 'rack', screen: 'rack', part: null, target: '.tools' },
  { name: 'plan', screen: 'plan', part: null, target: '.wanted' },
  { name: 'setUp', screen: 'setUp', part: null, target: '.set-up-sheet' },
  { name: 'grind', screen: 'grind', part: null, target: '.grind-stage' },
  { name: 'measure', screen: 'measure', part: null, target: '.entries' },
  { name: 'learnt', screen: 'measure', part: 'learnt', target: '.learnt-head, .page-note' },
]
