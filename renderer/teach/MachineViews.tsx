import { radiusOfRelief } from '../../geometry/aim.ts'
import type { LessonView } from '../../geometry/lesson/lesson.ts'
import type { PlanReport } from '../../geometry/report.ts'
import { BevelView } from '../grind/BevelView.tsx'
import { useDeepestMm } from '../grind/compare/useTogether.ts'
import { GlassView } from '../grind/GlassView.tsx'
import { PressureView } from '../grind/PressureView.tsx'
import type { Palette } from '../grind/useScreen.ts'
import { Views } from '../grind/Views.tsx'
import { BackView } from '../grind/views/BackView.tsx'
import type { ViewProps } from '../grind/views/room.ts'
import { SectionView } from '../grind/views/SectionView.tsx'

interface MachineViewsProps extends Omit<ViewProps, 'room'> {
  readonly views: readonly LessonView[]
  /** Relief wanted at the corners; null: it is not spoken of. */
  readonly wantedMm: number | null
  /** The glass shows this depth at least (mm). */
  readonly leastDeepMm: number
  readonly dot: 'left' | 'right'
  readonly palette: Palette
}

/** A plan for the glass, which draws an arc of it. */
const planFor = (reliefMm: number, widthMm: number): PlanReport => ({
  reliefMm,
  woodReliefMm: null,
  edgeRadiusMm: reliefMm > 0 ? radiusOfRelief(widthMm, reliefMm) : null,
  shavingWidthMm: null,
})

/** The named views of a machine, all of one width. */
export const MachineViews = ({ views, wantedMm, leastDeepMm, dot, palette, ...seen }: MachineViewsProps) => {
  const has = (view: LessonView) => views.includes(view)
  const deepestMm = Math.max(useDeepestMm(seen.running), leastDeepMm)
  const plan = wantedMm === null ? null : planFor(wantedMm, seen.running.job.blade.widthMm)
  return (
    <Views>
      {(plotPx) => {
        const view = { ...seen, room: { plotPx, heightPx: null } }
        return (
          <>
            {has('pressure') && <PressureView {...view} />}
            {has('glass') && <GlassView {...view} plan={plan} predicted={null} measured={null} also={{ deepestMm }} />}
            {has('bevel') && <BevelView {...view} palette={palette} dot={dot} />}
            {has('section') && <SectionView {...view} />}
            {has('back') && <BackView {...view} dot={dot} />}
          </>
        )
      }}
    </Views>
  )
}
