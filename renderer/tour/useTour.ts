import { create } from 'zustand'
import { useApp } from '../app/store.ts'
import { call } from '../app/transport.ts'

/** The step that the walk round the screens is at, from 0; null while nobody is shown round. */
export const useTour = create<{ readonly step: number | null }>()(() => ({ step: null }))

/** It is not offered again, on this data folder. */
export const declineTour = (): void => {
  const { workshop } = useApp.getState()
  if (!workshop || workshop.tourSeen) return
  useApp.setState({ workshop: { ...workshop, tourSeen: true } })
  void call('workshop.toured', {})
}

export const openTour = (): void => {
  declineTour()
  useTour.setState({ step: 0 })
}

export const closeTour = (): void => useTour.setState({ step: null })
