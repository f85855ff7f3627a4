import { useEffect } from 'react'
import { useApp } from '../../app/store.ts'
import type { Running } from '../../grind/useLiveGrind.ts'
import { useViewing, viewNames } from '../../grind/viewing.ts'
import { show, useShowModel } from './showing.ts'

const noWords = { text: [], question: '', choices: [], verdict: '' } as const

/** Free play before a class: any iron of the rack on Grind, with the views that stand beside it. */
export const useShowGrind = (running: Running, lifted: boolean): void => {
  const tool = useApp((app) => app.tool)
  const trial = useApp((app) => app.trial)
  const station = useApp((app) => app.station)
  const wantedMm = useApp((app) => app.report?.plan.reliefMm ?? null)
  const shown = useViewing((viewing) => viewing.shown)
  const heading = trial?.name ?? tool?.name ?? ''
  useEffect(() => {
    show({ ...noWords, heading })
    return () => show({ heading: '' })
  }, [heading])
  useShowModel(running, {
    lifted,
    dot: tool?.dotCorner ?? 'left',
    rotation: station?.rotation ?? 'intoEdge',
    cooling: station?.cooling ?? 'wet',
    views: viewNames.filter((name) => shown[name]),
    wantedMm,
    leastDeepMm: 0,
  })
}
