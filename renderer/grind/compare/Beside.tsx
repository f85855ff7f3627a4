import { useRef } from 'react'
import { planOf } from '../../../geometry/aim.ts'
import type { Job } from '../../../geometry/job.ts'
import { useApp } from '../../app/store.ts'
import { useTexts } from '../../ui/texts.tsx'
import { BevelView } from '../BevelView.tsx'
import { GlassView } from '../GlassView.tsx'
import { type Running, useMoment } from '../useLiveGrind.ts'
import { usePalette, useSize } from '../useScreen.ts'
import { OUTSIDE_PX } from '../Views.tsx'
import { useMeasured } from '../views/MeasuredEdge.tsx'
import { deepestMeasuredMm, type Measured } from '../views/measured.ts'
import type { Other } from './comparing.ts'
import { useOtherDot, useOtherName } from './useNames.ts'
import { useDeepestMm } from './useTogether.ts'

/** Narrower than this two views stand one under the other (px). */
const TWO_FROM_PX = 620
const GAP_PX = 24
/** Narrowest view in which its words find room (px). */
const LEAST_PX = 160

interface BesideProps {
  readonly own: Running
  readonly other: Other
  readonly lifted: boolean
}

const wantedMm = (job: Job): number => {
  const plan = planOf(job)
  return plan.ok ? plan.value.reliefMm : 0
}

/** Both edges and both bevels beside each other, in one scale across and one of depth. */
export const Beside = ({ own, other, lifted }: BesideProps) => {
  const t = useTexts()
  const ref = useRef<HTMLDivElement>(null)
  const size = useSize(ref)
  const name = useOtherName()
  const otherDot = useOtherDot()
  const ownDot = useApp((app) => app.tool?.dotCorner ?? 'left')
  const measured = useMeasured()
  const deepestMm = Math.max(
    useDeepestMm(own),
    useDeepestMm(other.running),
    wantedMm(own.job),
    wantedMm(other.running.job),
    deepestMeasuredMm(measured),
  )
  const widthPx = size?.widthPx ?? 0
  const columnPx = widthPx < TWO_FROM_PX ? widthPx : (widthPx - GAP_PX) / 2
  const widest = Math.max(own.job.blade.widthMm, other.running.job.blade.widthMm)
  const pxPerMm = Math.max(columnPx - OUTSIDE_PX, LEAST_PX) / widest
  const shared = { deepestMm, pxPerMm, lifted, columnPx }
  return (
    <div className="compare-beside" ref={ref}>
      {size && (
        <>
          <One running={own} name={t('compare:this')} dot={ownDot} measured={measured} {...shared} />
          <One running={other.running} name={name} dot={otherDot} measured={null} {...shared} />
        </>
      )}
    </div>
  )
}

interface OneProps {
  readonly running: Running
  readonly name: string
  readonly dot: 'left' | 'right'
  readonly measured: Measured | null
  readonly lifted: boolean
  readonly deepestMm: number
  readonly pxPerMm: number
  readonly columnPx: number
}

const One = ({ running, name, dot, measured, lifted, deepestMm, pxPerMm, columnPx }: OneProps) => {
  const palette = usePalette()
  const moment = useMoment(running)
  const plan = planOf(running.job)
  const room = { plotPx: running.job.blade.widthMm * pxPerMm, heightPx: null }
  const views = { running, moment, lifted, room }
  return (
    <section aria-label={name} style={{ width: columnPx }}>
      <p className="compare-name">{name}</p>
      <GlassView
        {...views}
        plan={plan.ok ? plan.value : null}
        predicted={null}
        measured={measured}
        also={{ deepestMm }}
      />
      <BevelView {...views} palette={palette} dot={dot} />
    </section>
  )
}
