import { create } from 'zustand'
import type { Fixture, Station } from '../../../main/contract/entities.ts'
import { useApp } from '../../app/store.ts'

/** A station or fixture whose sheet is open; the record is kept as it was when it was opened. Null: a new one. */
export type OpenedServing =
  | { readonly noun: 'station'; readonly record: Station | null }
  | { readonly noun: 'fixture'; readonly record: Fixture | null }

/** Which sheet is open, so that a scan can open one from anywhere. */
export const useServingSheet = create<{ readonly opened: OpenedServing | null }>()(() => ({ opened: null }))

export const showServing = (opened: OpenedServing | null): void => useServingSheet.setState({ opened })

/** Opens the sheet of a station or fixture of the rack. @returns false where the window does not know it */
export const openServing = (noun: OpenedServing['noun'], id: string): boolean => {
  const { stations, fixtures } = useApp.getState()
  const station = noun === 'station' && stations.find((each) => each.id === id)
  const fixture = noun === 'fixture' && fixtures.find((each) => each.id === id)
  if (station) showServing({ noun: 'station', record: station })
  if (fixture) showServing({ noun: 'fixture', record: fixture })
  return Boolean(station || fixture)
}
