import { useId, useRef } from 'react'
import { quantities } from '../../geometry/quantities.ts'
import { degFromRad } from '../../geometry/units.ts'
import { ScaleCaption } from '../glass/ScaleCaption.tsx'
import { ScaleBar } from '../ui/ScaleBar.tsx'
import { PX_PER_MM } from '../ui/scale.ts'
import { useTexts } from '../ui/texts.tsx'
import { useBox } from '../ui/useBox.ts'
import { useDrag } from '../ui/useDrag.ts'
import { useFigures } from '../ui/useFigure.ts'
import { useWindowHeight } from '../ui/useWindowHeight.ts'
import { type SectionLayout, sectionLayout, woodPaths } from './sectionLayout.ts'
import type { Seen } from './seen.ts'
import type { WoodSetting } from './setting.ts'

interface SectionDrawingProps {
  readonly seen: Seen
  readonly setting: WoodSetting
  readonly onChange: (patch: Partial<WoodSetting>) => void
}

const BEFORE = { widthPx: 960, heightPx: 300 }
/** Height of the window that everything but the wood takes, and the least and most that the wood may (px). */
const TAKEN_PX = 640
const LEAST_PX = 110
const MOST_PX = 340
const LEAST_WIDTH_PX = 288

/** The wood in section under the edge, seen from behind the plane, with handles for depth and lever. */
export const SectionDrawing = ({ seen, setting, onChange }: SectionDrawingProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const paper = useRef<HTMLElement>(null)
  const roomPx = Math.max(LEAST_WIDTH_PX, useBox(paper, BEFORE).widthPx)
  const belowPx = Math.min(MOST_PX, Math.max(LEAST_PX, useWindowHeight() - TAKEN_PX))
  const layout = sectionLayout(seen, setting.stepMm, setting.boardMm, roomPx, belowPx)
  const label = t('wood:section.label', {
    depth: inWords(seen.depthMm, 'mm', 2),
    width: inWords(seen.cut.widthMm, 'mm', 1),
  })
  return (
    <figure className="wood-section" ref={paper}>
      <svg className="drawing" width={roomPx} height={layout.heightPx} role="img" aria-label={label}>
        <Wood layout={layout} roomPx={roomPx} />
        {layout.capPx !== null && <Cap layout={layout} capPx={layout.capPx} clear={seen.cap?.advice === 'capClear'} />}
        <CutWidth seen={seen} layout={layout} />
        <DigIn seen={seen} layout={layout} />
        <Names seen={seen} layout={layout} roomPx={roomPx} />
        <Grips seen={seen} layout={layout} setting={setting} onChange={onChange} />
        <ScaleBar xPx={8} yPx={layout.surfacePx + 12} factor={layout.depth} mostPx={belowPx} upright />
      </svg>
      <ScaleCaption heading={t('wood:section.heading')} across={layout.across} depth={layout.depth} />
    </figure>
  )
}

interface PartProps {
  readonly layout: SectionLayout
}

/** Board, shaving and edge. */
export const Wood = ({ layout, roomPx }: PartProps & { readonly roomPx: number }) => {
  const clip = useId()
  const { surfacePx, heightPx, board } = layout
  const paths = woodPaths(layout, roomPx)
  const grain = [0.2, 0.45, 0.7, 0.9].map((share) => surfacePx + share * (heightPx - surfacePx))
  return (
    <>
      <clipPath id={clip}>
        <rect x={board[0]} y="0" width={Math.max(0, board[1] - board[0])} height={heightPx} />
      </clipPath>
      <g clipPath={`url(#${clip})`}>
        <path className="shaving" d={paths.shaving} />
        <path className="wood" d={paths.wood} />
        <clipPath id={`${clip}-wood`}>
          <path d={paths.wood} />
        </clipPath>
        <path
          className="wood-grain"
          clipPath={`url(#${clip}-wood)`}
          d={grain.map((y) => `M0 ${y}q${roomPx / 4} -6 ${roomPx / 2} 0t${roomPx / 2} 0`).join('')}
        />
        <path className="surface wood-before" d={paths.before} />
      </g>
      <path className="datum" d={`M0 ${surfacePx}H${roomPx}`} />
      <path className="now" d={paths.edge} />
    </>
  )
}

/** A straight cap iron in front of which the edge must stand out: where its corners rise above the line they have nothing under them. */
const Cap = ({ layout, capPx, clear }: PartProps & { readonly capPx: number; readonly clear: boolean }) => {
  const t = useTexts()
  const [[left], [right]] = layout.corners
  return (
    <>
      <path className="wood-cap" data-clear={clear} d={`M${left} ${capPx}H${right}`} />
      <text x={right - 8} y={capPx - 6} textAnchor="end">
        {t('wood:cap.line')}
      </text>
    </>
  )
}

const CutWidth = ({ seen: { cut }, layout }: PartProps & { readonly seen: Seen }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  if (cut.widthMm === 0) return null
  const px = (mm: number) => layout.middlePx + mm * layout.across * PX_PER_MM
  const [left, right] = [px(cut.leftMm), px(cut.rightMm)]
  const y = layout.heightPx - 20
  return (
    <>
      <path
        className="dimension"
        d={`M${left} ${layout.surfacePx}V${y + 6}M${right} ${layout.surfacePx}V${y + 6}M${left} ${y}H${right}`}
      />
      <text className="on-wood" x={(left + right) / 2} y={y - 6} textAnchor="middle">
        {t('wood:section.wide', { width: inWords(cut.widthMm, 'mm', 1) })}
      </text>
    </>
  )
}

/** A corner in the wood leaves a step. */
/** Marks over the corners that stand in the wood. */
export const DigIn = ({ seen: { corners }, layout }: PartProps & { readonly seen: Seen }) => {
  const marks = [corners.leftMm > 0 && layout.corners[0], corners.rightMm > 0 && layout.corners[1]]
  return (
    <>
      {marks.map(
        (place) =>
          place && (
            <g key={place[0]} className="wood-dig" transform={`translate(${place[0]} ${layout.surfacePx - 14})`}>
              <path d="M-9 0H9L0 12Z" />
            </g>
          ),
      )}
    </>
  )
}

/** The dot stands over the board, clear of the mark of a corner that digs in (px). */
const DOT_ABOVE_PX = 28

const Names = ({ seen, layout, roomPx }: PartProps & { readonly seen: Seen; readonly roomPx: number }) => {
  const t = useTexts()
  const { corners, heightPx } = layout
  const dot = corners[seen.dot === 'left' ? 0 : 1]
  const y = Math.max(16, Math.min(dot[1] - 14, layout.surfacePx - DOT_ABOVE_PX))
  return (
    <>
      <circle className="dot" cx={dot[0] + (seen.dot === 'left' ? 12 : -12)} cy={y} r="6" />
      <text className="on-wood" x={8} y={heightPx - 4}>
        {t('common:side.left')}
      </text>
      <text className="on-wood" x={roomPx - 8} y={heightPx - 4} textAnchor="end">
        {t('common:side.right')}
      </text>
    </>
  )
}

/** Hundredths, as fine as depth and lever are read. */
const FINE = 100

const within = (value: number, { min, max }: { readonly min: number; readonly max: number }): number =>
  Math.min(max, Math.max(min, Math.round(value * FINE) / FINE))

interface GripsProps extends PartProps, SectionDrawingProps {}

/** Rings to take hold of: the crown goes deeper, the right corner turns with the lever. Fields do the same by keyboard. */
const Grips = ({ seen, layout, setting, onChange }: GripsProps) => {
  const t = useTexts()
  const mmPerPx = 1 / (layout.depth * PX_PER_MM)
  const half = seen.profile.uMm.at(-1) as number
  const deeper = useDrag<number>({
    at: (start, _, dy) => within(start + dy * mmPerPx, quantities.aim.shavingDepthMm),
    onDraft: (depthMm) => depthMm !== null && onChange({ depthMm }),
    onEnd: (depthMm) => onChange({ depthMm }),
  })
  const turn = useDrag<number>({
    at: (start, _, dy) => within(start - degFromRad((dy * mmPerPx) / seen.seatSine / half), quantities.wood.leverDeg),
    onDraft: (leverDeg) => leverDeg !== null && onChange({ leverDeg }),
    onEnd: (leverDeg) => onChange({ leverDeg }),
  })
  const [, right] = layout.corners
  const ring = (x: number, y: number, name: string, hold: ReturnType<typeof deeper>) => (
    <g className="wood-grip" transform={`translate(${x} ${Math.max(6, y)})`} {...hold}>
      <title>{name}</title>
      <circle className="wood-hold" r={16} />
      <circle className="wood-ring" r={4.5} />
    </g>
  )
  return (
    <g>
      {ring(layout.crown[0], layout.crown[1], t('wood:grip.depth'), deeper(seen.depthMm))}
      {ring(right[0], right[1], t('wood:grip.lever'), turn(setting.leverDeg))}
    </g>
  )
}
