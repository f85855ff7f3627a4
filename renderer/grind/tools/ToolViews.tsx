import { useTexts } from '../../ui/texts.tsx'
import type { PanelProps } from '../GrindBar.tsx'
import { useReading } from '../useLiveGrind.ts'
import { ProtractorView } from './ProtractorView.tsx'
import { RuleView } from './RuleView.tsx'
import { StopwatchView } from './StopwatchView.tsx'
import { StraightedgeView } from './StraightedgeView.tsx'
import { readField } from './steel.ts'
import { useToolbox } from './toolbox.ts'
import './tools.css'

interface ToolViewsProps extends PanelProps {
  readonly plotPx: number
}

/** What a tool that measures the blade is given. */
export interface BladeToolProps extends ToolViewsProps {
  /** The blade of the moment, as in geometry/pose.ts. */
  readonly field: Float64Array
}

/** The tools laid out: they measure the blade of the moment shown, and follow it. */
export const ToolViews = (props: ToolViewsProps) => {
  const { straightedge, protractor, rule, stopwatch } = useToolbox((box) => box.laid)
  return (
    <>
      {(straightedge || protractor || rule) && <BladeTools {...props} />}
      {stopwatch && <StopwatchView {...props} />}
    </>
  )
}

const BladeTools = (props: ToolViewsProps) => {
  const t = useTexts()
  const { straightedge, protractor, rule } = useToolbox((box) => box.laid)
  const field = useReading(props.running, readField)
  return (
    <>
      <p className="caution-line tools-caution">
        <span aria-hidden="true">!</span>
        {t('tools:caution')}
      </p>
      {straightedge && <StraightedgeView {...props} field={field} />}
      {protractor && <ProtractorView {...props} field={field} />}
      {rule && <RuleView {...props} field={field} />}
    </>
  )
}
