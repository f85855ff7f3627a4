import { useMemo } from 'react'
import { useApp } from '../../app/store.ts'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import type { Running } from '../useLiveGrind.ts'
import { useKeeping } from './keeping.ts'
import type { HandleKind } from './kind.ts'
import { kindsOf } from './kinds.ts'

/** What of this machine can be set by hand here, in the order in which the keyboard goes through it. */
export const useKinds = ({ job, setUp }: Running, lifted: boolean): readonly HandleKind[] => {
  const t = useTexts()
  const figures = useFigures()
  const station = useApp((app) => app.station)
  const keeping = useKeeping()
  return useMemo(
    () => kindsOf({ t, figures, job, setUp, station }, lifted).filter(({ id }) => keeping.may(id)),
    [t, figures, job, setUp, station, lifted, keeping],
  )
}
