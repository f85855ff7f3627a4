import type { ComponentProps } from 'react'
import type { GrindReport, PlanReport } from '../../../geometry/report.ts'
import { ComparedBevel, ComparedGlass } from '../compare/ComparedViews.tsx'
import { PressureView } from '../PressureView.tsx'
import type { Palette } from '../useScreen.ts'
import type { ViewName } from '../viewing.ts'
import { BackView } from './BackView.tsx'
import { useMeasured } from './MeasuredEdge.tsx'
import type { ViewProps } from './room.ts'
import { SectionView } from './SectionView.tsx'
import { WoodView } from './WoodView.tsx'

/** What one or the other view needs. */
export interface AnyViewProps extends ViewProps {
  readonly name: ViewName
  readonly palette: Palette
  readonly dot: 'left' | 'right'
  readonly plan: PlanReport | null
  /** The prediction; null while it is not known, or not yet to be told. */
  readonly predicted: GrindReport | null
}

/** The glass of the iron in hand, with what was measured of it. */
const OwnGlass = (props: Omit<ComponentProps<typeof ComparedGlass>, 'measured'>) => (
  <ComparedGlass {...props} measured={useMeasured()} />
)

/** The view of a name. */
export const AnyView = ({ name, palette, dot, plan, predicted, ...view }: AnyViewProps) => {
  switch (name) {
    case 'pressure':
      return <PressureView {...view} />
    case 'glass':
      return <OwnGlass {...view} plan={plan} predicted={predicted} />
    case 'bevel':
      return <ComparedBevel {...view} palette={palette} dot={dot} />
    case 'section':
      return <SectionView {...view} />
    case 'back':
      return <BackView {...view} dot={dot} />
    case 'wood':
      return <WoodView {...view} />
  }
}
