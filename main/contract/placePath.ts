import type { Place } from './people.ts'

/** @returns a place and those it stands in, itself first; empty: it is not there */
export const wayUp = (places: readonly Place[], id: string | null): readonly Place[] => {
  const way: Place[] = []
  for (let at = id; at !== null; ) {
    const place = places.find((each) => each.id === at && !way.includes(each))
    if (!place) break
    way.push(place)
    at = place.parentId
  }
  return way
}

/** @returns a place's names from the outermost to itself, as the list shows them; empty: it is not there */
export const placePath = (places: readonly Place[], id: string | null): string =>
  wayUp(places, id)
    .map(({ name }) => name)
    .reverse()
    .join(' / ')
