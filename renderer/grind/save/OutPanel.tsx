import { useEffect, useState } from 'react'
import type { PanelProps } from '../GrindBar.tsx'
import { ClipPart } from './ClipPart.tsx'
import './out.css'
import { PicturePart } from './PicturePart.tsx'
import { type Pictured, picturedIn } from './pictured.ts'
import { SolidPart } from './SolidPart.tsx'
import { TemplatePart } from './TemplatePart.tsx'

const same = (one: readonly Pictured[], other: readonly Pictured[]): boolean =>
  one.length === other.length && one.every(({ element }, i) => element === other[i]?.element)

/** The views in sight, looked at again whenever the panel is drawn: views come and go beside it. */
const usePictured = (): readonly Pictured[] => {
  const [pictured, setPictured] = useState<readonly Pictured[]>([])
  useEffect(() => {
    const found = picturedIn(document)
    if (!same(found, pictured)) setPictured(found)
  })
  return pictured
}

/** What leaves the screen as a file: a picture, a clip, the blade as a solid, the curve on paper. */
const OutPanel = ({ running, moment }: PanelProps) => {
  const pictured = usePictured()
  const [chosen, setChosen] = useState('')
  const view = pictured.find(({ name }) => name === chosen) ?? pictured[0]
  return (
    <div className="out-panel">
      <PicturePart pictured={pictured} view={view} onView={setChosen} />
      <ClipPart view={view} running={running} moment={moment} />
      <SolidPart running={running} moment={moment} />
      <TemplatePart />
    </div>
  )
}

export default OutPanel
