import type { Side } from '../../geometry/report.ts'
import { FigureField } from '../ui/FigureField.tsx'
import { useTexts } from '../ui/texts.tsx'
import { changeTurns, useRefusal } from './editMotion.ts'
import { turnsPath } from './stops.ts'

/** The turns of one stop screw, to be typed; beside the free play they give. */
export const TurnsField = ({ side, turns }: { readonly side: Side; readonly turns: number }) => {
  const t = useTexts()
  const path = turnsPath(side)
  return (
    <FigureField
      quantity={path}
      value={turns}
      label={t(side === 'left' ? 'grind:label.turnsLeft' : 'grind:label.turnsRight')}
      size="small"
      onCommit={(value) => changeTurns(side, value ?? 0)}
      {...useRefusal(path)}
    />
  )
}
