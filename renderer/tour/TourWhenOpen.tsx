import { lazy, Suspense } from 'react'
import { useTour } from './useTour.ts'

const Tour = lazy(async () => ({ default: (await import('./Tour.tsx')).Tour }))

/** The walk round the screens, read when somebody takes it. */
export const TourWhenOpen = () => {
  const step = useTour((tour) => tour.step)
  return (
    step !== null && (
      <Suspense fallback={null}>
        <Tour step={step} />
      </Suspense>
    )
  )
}
