import type { TFunction } from 'i18next'
import type { CallOutput } from '../../main/contract/calls.ts'
import type { Settings } from '../../main/contract/entities.ts'
import type { Screen } from '../app/route.ts'
import { aboutEntries } from './aboutEntries.ts'
import type { Entry } from './entry.ts'
import { jobFieldEntries } from './jobFieldEntries.ts'
import { keyEntries } from './keyEntries.ts'
import { modelEntries } from './modelEntries.ts'
import { partEntries } from './partEntries.ts'
import { problemEntries } from './problemEntries.ts'
import { quantityEntries } from './quantityEntries.ts'
import { wordEntries } from './wordEntries.ts'

/** What help is made from, beside the catalogue and the tables of figures, keys and the job file. */
export interface HelpSources {
  readonly lengthUnit: Settings['lengthUnit']
  /** Null until the host has told it. */
  readonly about: CallOutput<'workshop.about'> | null
  /** The text of `geometry/MODEL.md`. */
  readonly modelPage: string
  /** Whether a screen has a part of this name. */
  isPart(screen: Screen, name: string): boolean
}

/** Everything that help tells of, page by page. */
export const allEntries = (t: TFunction, { lengthUnit, about, modelPage, isPart }: HelpSources): readonly Entry[] => [
  ...partEntries(t, isPart),
  ...wordEntries(t),
  ...quantityEntries(t, lengthUnit),
  ...keyEntries(t),
  ...jobFieldEntries(t),
  ...problemEntries(t),
  ...modelEntries(modelPage),
  ...aboutEntries(t, about),
]
