import { type PointerEvent, useMemo, useRef } from 'react'
import { foremostMm } from '../../../geometry/edge.ts'
import { type Rest, restUnder, type SteelLine } from '../../../geometry/straightedge.ts'
import { ScaleBar } from '../../ui/ScaleBar.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import { acrossPx } from '../curves.ts'
import { NowCurve } from '../GlassCurves.tsx'
import { moveTo, type PointRow, usePointRow } from '../pointRow.ts'
import { type Running, useEachFrame } from '../useLiveGrind.ts'
import { OUTSIDE_PX, Stations } from '../Views.tsx'
import { Knob } from './Knob.tsx'
import { LeafKnob } from './LeafKnob.tsx'
import { type StraightedgeReading, TRIED } from './straightedgeReading.ts'
import {
  addStraightedge,
  FOOT_PX,
  HEIGHT_PX,
  restYPx,
  type StraightedgeScale,
  touchesTwice,
} from './straightedgeScale.ts'
import { useToolbox } from './toolbox.ts'
import { usePlaceWords } from './usePlaceWords.ts'

interface StraightedgeDrawingProps {
  readonly running: Running
  readonly scale: StraightedgeScale
  readonly reading: StraightedgeReading
  readonly edge: SteelLine
  readonly plotPx: number
}

/** The edge magnified, with what lies on it and what is tried under it. */
export const StraightedgeDrawing = (props: StraightedgeDrawingProps) => {
  const { running, scale, reading, edge, plotPx } = props
  const t = useTexts()
  const { plain, inWords } = useFigures()
  const leaf = (k: number) => inWords(reading.leavesMm[k] ?? 0, 'mm', 2)
  const words = { left: leaf(0), halfwayLeft: leaf(1), middle: leaf(2), halfwayRight: leaf(3), right: leaf(4) }
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing that holds controls
    <svg
      width={plotPx + OUTSIDE_PX}
      height={HEIGHT_PX}
      className="grind-plot tool-drawing"
      role="group"
      aria-label={t('tools:straightedge.label', words)}
    >
      <Stations plotPx={plotPx} heightPx={HEIGHT_PX} />
      <NowCurve running={running} scale={scale} heightPx={HEIGHT_PX} lifted />
      <Lying {...props} />
      <LeafKnob scale={scale} reading={reading} foremostMm={foremostMm(edge.backMm)} plotPx={plotPx} />
      <ScaleBar xPx={plotPx + 16} yPx={8} factor={scale.depthFactor} mostPx={56} upright />
      <ScaleBar xPx={plotPx + 16} yPx={HEIGHT_PX - 12} factor={scale.acrossFactor} mostPx={34} />
      {TRIED.map((share, k) => (
        <text
          key={share}
          className="tool-leaf-figure"
          x={(plotPx * (share + 1)) / 2 - share * 4}
          y={HEIGHT_PX - FOOT_PX / 2 + 8}
          textAnchor={share === -1 ? 'start' : share === 1 ? 'end' : 'middle'}
        >
          {plain(reading.leavesMm[k] ?? 0, 'mm', 2).text}
        </text>
      ))}
    </svg>
  )
}

/** So far must a finger go to press an end right down (px). */
const PRESS_PX = 48
const PRESS_STEP = 0.05

/** The straightedge itself: pressed down on a side by dragging that side down. */
const Lying = ({ running, scale, reading, plotPx }: StraightedgeDrawingProps) => {
  const t = useTexts()
  const placeWords = usePlaceWords(running.job.blade.widthMm)
  const press = useToolbox((box) => box.press)
  const side = useRef<-1 | 1>(1)
  const body = usePointRow<SVGPolygonElement>()
  const hold = usePointRow<SVGPolygonElement>()
  const first = useRef<SVGCircleElement>(null)
  const last = useRef<SVGCircleElement>(null)
  const { shape } = running
  const edge = useMemo(() => ({ atMm: shape.uMm, backMm: new Float64Array(shape.acrossCount) }), [shape])
  useEachFrame(running, ({ vMm }) => {
    for (let i = 0; i < edge.backMm.length; i++) edge.backMm[i] = vMm[i * shape.throughCount] as number
    const rest = restUnder(edge, press)
    const zeroMm = foremostMm(edge.backMm)
    drawStraightedge(body, rest, zeroMm, scale)
    drawStraightedge(hold, rest, zeroMm, scale)
    const toMm = touchesTwice(rest) ? rest.lastMm : rest.firstMm
    moveTo(first.current, acrossPx(scale, rest.firstMm), restYPx(scale, rest, rest.firstMm, zeroMm))
    moveTo(last.current, acrossPx(scale, toMm), restYPx(scale, rest, toMm, zeroMm))
  })
  const { firstMm, lastMm } = reading.rest
  const touches = t(touchesTwice(reading.rest) ? 'tools:straightedge.touchesFrom' : 'tools:straightedge.touchesAt', {
    at: placeWords(firstMm),
    to: placeWords(lastMm),
  })
  const onHold = (event: PointerEvent<SVGElement>): void => {
    const left = event.currentTarget.ownerSVGElement?.getBoundingClientRect().left ?? 0
    side.current = event.clientX - left < plotPx / 2 ? -1 : 1
  }
  return (
    <Knob
      name={t('tools:straightedge.heading')}
      value={press}
      min={-1}
      max={1}
      step={PRESS_STEP}
      jumps={[-1, 0, 1]}
      words={touches}
      at={(start, _dx, dy) => Math.round((start + (side.current * dy) / PRESS_PX) / PRESS_STEP) * PRESS_STEP}
      onHold={onHold}
      onChange={(value) => useToolbox.setState({ press: value })}
    >
      <polygon ref={hold.ref} className="tool-hold" />
      <polygon ref={body.ref} className="tool-body" />
      <circle ref={first} className="tool-touch" r={5} />
      <circle ref={last} className="tool-touch" r={5} />
    </Knob>
  )
}

const drawStraightedge = (row: PointRow, rest: Rest, zeroMm: number, scale: StraightedgeScale): void => {
  row.start()
  addStraightedge(row, rest, zeroMm, scale)
  row.end()
}
