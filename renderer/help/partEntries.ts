import type { TFunction } from 'i18next'
import { type Screen, screens } from '../app/route.ts'
import type { Entry } from './entry.ts'

interface PartWords {
  readonly title: string
  readonly for: string
  readonly steps: readonly string[]
}

type PartTexts = Readonly<Record<string, Readonly<Record<string, PartWords>>>>

/** A sheet has no address of its own: its screen is where it is opened. */
const placeOf = (screen: string, name: string, isPart: (screen: Screen, name: string) => boolean): Entry['place'] => {
  if (!(screen in screens)) return undefined
  const known = screen as Screen
  return { screen: known, part: isPart(known, name) ? name : null }
}

/** What each part of the program is for, and its first steps. @param isPart whether a screen has a part of this name */
export const partEntries = (t: TFunction, isPart: (screen: Screen, name: string) => boolean): readonly Entry[] =>
  Object.entries(t('help:part', { returnObjects: true }) as PartTexts).flatMap(([screen, names]) =>
    Object.entries(names).map(([name, words]): Entry => {
      const place = placeOf(screen, name, isPart)
      return {
        page: 'parts',
        id: `parts.${screen}.${name}`,
        title: words.title,
        lines: [`${words.for.charAt(0).toUpperCase()}${words.for.slice(1)}.`],
        steps: words.steps,
        ...(place && { place }),
      }
    }),
  )
