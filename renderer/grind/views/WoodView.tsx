import { useCallback, useId, useMemo } from 'react'
import { useApp } from '../../app/store.ts'
import { ScaleBar } from '../../ui/ScaleBar.tsx'
import { PX_PER_MM } from '../../ui/scale.ts'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import { type SectionLayout, sectionLayout } from '../../wood/sectionLayout.ts'
import type { Seen } from '../../wood/seen.ts'
import { useWoodSetting } from '../../wood/setting.ts'
import type { Frame, RunShape } from '../../worker/protocol.ts'
import { factorText } from '../glassScale.ts'
import { type PointRow, usePointRow } from '../pointRow.ts'
import { useEachFrame, useReading } from '../useLiveGrind.ts'
import { OUTSIDE_PX } from '../Views.tsx'
import { LinkedHead } from './LinkedHead.tsx'
import { type AcrossPlot, PlaceMark } from './PlaceMark.tsx'
import { heightIn, type ViewProps } from './room.ts'
import { type InPlane, inPlaneMm, onBladeMm, seenNow, thicknessAt, woodSurface } from './woodNow.ts'
import '../../wood/wood.css'

const HEIGHT_PX = 128
const ROOMS_PX = { abovePx: 40, footPx: 28 }
const BAR_MOST_PX = 56

/** Wood view: what the edge as it is at this moment leaves in the wood, set as the wood view of Plan is. */
export const WoodView = (props: ViewProps) => {
  const t = useTexts()
  const tool = useApp((app) => app.tool)
  const report = useApp((app) => app.report)
  const setting = useWoodSetting(tool?.id ?? '')
  const inPlane = useMemo(() => tool && report && { tool, report, setting }, [tool, report, setting])
  const { running } = props
  const read = useCallback((frame: Frame, shape: RunShape) => inPlane && seenNow(frame, shape, inPlane), [inPlane])
  const seen = useReading(running, read)
  if (inPlane && seen) return <Wood {...props} inPlane={inPlane} seen={seen} />
  return (
    <section className="grind-view" data-view="wood">
      <LinkedHead view="wood" note="" />
      <p className="grind-view-line">{t(tool?.seatAngleDeg === null ? 'views:wood.noSeat' : 'views:wood.waiting')}</p>
    </section>
  )
}

interface WoodProps extends ViewProps {
  readonly inPlane: InPlane
  readonly seen: Seen
}

const Wood = ({ running, room, inPlane, seen }: WoodProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const widthPx = room.plotPx + OUTSIDE_PX
  const belowPx = heightIn(room, HEIGHT_PX) - ROOMS_PX.abovePx - ROOMS_PX.footPx
  const layout = sectionLayout(seen, inPlane.setting.stepMm, inPlane.setting.boardMm, room.plotPx, belowPx, ROOMS_PX)
  const words = {
    depth: inWords(seen.depthMm, 'mm', 2),
    width: inWords(seen.cut.widthMm, 'mm', 1),
    crown: inWords(seen.camberMm, 'mm', 3),
  }
  return (
    <section className="grind-view" data-view="wood">
      <LinkedHead
        view="wood"
        note={t('views:factors', { across: factorText(layout.across), depth: factorText(layout.depth) })}
      />
      <svg
        className="drawing grind-wood"
        width={widthPx}
        height={layout.heightPx}
        role="img"
        aria-label={t('views:wood.label', words)}
      >
        <WoodNow running={running} inPlane={inPlane} seen={seen} layout={layout} roomPx={room.plotPx} />
        <ScaleBar xPx={room.plotPx + 12} yPx={layout.surfacePx} factor={layout.depth} mostPx={BAR_MOST_PX} upright />
        <PlaceMark
          running={running}
          plot={plotOf(layout, room.plotPx, inPlane)}
          words={({ uMm }) =>
            t('views:wood.at', { thickness: inWords(thicknessAt(seen, inPlaneMm(inPlane, uMm)), 'mm', 3) })
          }
        />
      </svg>
      <p className="grind-view-line">
        {t('views:wood.line', words)}. {inPlane.tool.bevelSide === 'up' && t('views:wood.turnedOver')}
      </p>
    </section>
  )
}

const plotOf = (layout: SectionLayout, widthPx: number, inPlane: InPlane): AcrossPlot => {
  const each = layout.across * PX_PER_MM
  return {
    widthPx,
    heightPx: layout.heightPx,
    xPx: (uMm) => layout.middlePx + inPlaneMm(inPlane, uMm) * each,
    uMm: (xPx) => onBladeMm(inPlane, (xPx - layout.middlePx) / each),
  }
}

interface WoodNowProps extends Pick<WoodProps, 'running' | 'inPlane' | 'seen'> {
  readonly layout: SectionLayout
  readonly roomPx: number
}

/** Board, shaving and edge, drawn by hand with every frame. */
const WoodNow = ({ running, inPlane, seen, layout, roomPx }: WoodNowProps) => {
  const clip = useId()
  const shaving = usePointRow<SVGPolygonElement>()
  const wood = usePointRow<SVGPolygonElement>()
  const before = usePointRow<SVGPolylineElement>()
  const edge = usePointRow<SVGPolylineElement>()
  const { board, heightPx, surfacePx, across, depth, middlePx } = layout
  const { depthMm, seatSine } = seen
  const surface = useMemo(
    () => woodSurface(running.shape, inPlane, { depthMm, seatSine }, { across, middlePx }, roomPx),
    [running, inPlane, depthMm, seatSine, across, middlePx, roomPx],
  )
  useEachFrame(running, ({ vMm }) => {
    surface.fill(vMm)
    const addBoard = (row: PointRow, belowMm: Float64Array): void => {
      for (let k = 0; k < belowMm.length; k++)
        row.add(
          middlePx + (surface.placesMm[k] as number) * across * PX_PER_MM,
          surfacePx + (belowMm[k] as number) * depth * PX_PER_MM,
        )
    }
    const drawBody = (row: PointRow, belowMm: Float64Array): void => {
      row.start()
      row.add(0, heightPx)
      addBoard(row, belowMm)
      row.add(roomPx, heightPx)
      row.end()
    }
    drawBody(shaving, surface.beforeMm)
    drawBody(wood, surface.afterMm)
    before.start()
    addBoard(before, surface.beforeMm)
    before.end()
    edge.start()
    for (let i = 0; i < surface.uMm.length; i++)
      edge.add(
        middlePx + (surface.uMm[i] as number) * across * PX_PER_MM,
        surfacePx + (depthMm - (surface.behindMm[i] as number) * seatSine) * depth * PX_PER_MM,
      )
    edge.end()
  })
  return (
    <>
      <clipPath id={clip}>
        <rect x={board[0]} y="0" width={Math.max(0, board[1] - board[0])} height={heightPx} />
      </clipPath>
      <g clipPath={`url(#${clip})`}>
        <polygon ref={shaving.ref} className="shaving" />
        <polygon ref={wood.ref} className="wood" />
        <polyline ref={before.ref} className="surface wood-before" />
      </g>
      <path className="datum" d={`M0 ${surfacePx}H${roomPx}`} />
      <polyline ref={edge.ref} className="now" />
    </>
  )
}
