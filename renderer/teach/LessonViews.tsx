import { planOf } from '../../geometry/aim.ts'
import { BevelView } from '../grind/BevelView.tsx'
import { GlassView } from '../grind/GlassView.tsx'
import { PressureView } from '../grind/PressureView.tsx'
import type { Palette } from '../grind/useScreen.ts'
import { Views } from '../grind/Views.tsx'
import { BackView } from '../grind/views/BackView.tsx'
import type { ViewProps } from '../grind/views/room.ts'
import { SectionView } from '../grind/views/SectionView.tsx'
import { speaksOfWanted } from './LessonModel.tsx'
import type { StepProps } from './LessonRun.tsx'

interface LessonViewsProps extends StepProps, Omit<ViewProps, 'room'> {
  readonly palette: Palette
}

/** The views that a step names, beside or below its model. */
export const LessonViews = ({ step, state, palette, running, moment, lifted }: LessonViewsProps) => {
  const plan = planOf(state.job)
  const { dotCorner: dot } = state.bench
  const has = (view: (typeof step.views)[number]) => step.views.includes(view)
  return (
    <Views>
      {(plotPx) => {
        const view = { running, moment, lifted, room: { plotPx, heightPx: null } }
        return (
          <>
            {has('pressure') && <PressureView {...view} />}
            {has('glass') && (
              <GlassView
                {...view}
                plan={plan.ok && speaksOfWanted(step) ? plan.value : null}
                predicted={null}
                measured={null}
              />
            )}
            {has('bevel') && <BevelView {...view} palette={palette} dot={dot} />}
            {has('section') && <SectionView {...view} />}
            {has('back') && <BackView {...view} dot={dot} />}
          </>
        )
      }}
    </Views>
  )
}
