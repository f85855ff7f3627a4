import type { Place } from '../../main/contract/people.ts'

/** @returns a place's names from the outermost to itself, as the list shows them; empty: it is not there */
export const placePath = (places: readonly Place[], id: string | null): string => {
  const names: string[] = []
  const passed = new Set<string>()
  for (let at = id; at !== null && !passed.has(at); ) {
    passed.add(at)
    const place = places.find((each) => each.id === at)
    if (!place) break
    names.unshift(place.name)
    at = place.parentId
  }
  return names.join(' / ')
}
