import { useMemo, useRef } from 'react'
import { ScaleBar } from '../ui/ScaleBar.tsx'
import { useTexts } from '../ui/texts.tsx'
import type { RunShape } from '../worker/protocol.ts'
import { acrossScale, depthScale, factorText, type Scale } from './glassScale.ts'
import { setSpan } from './pointRow.ts'
import { firstTouching, lastTouching } from './touching.ts'
import { type Running, useEachFrame } from './useLiveGrind.ts'
import type { Palette } from './useScreen.ts'
import { BevelBand, BevelLegend } from './views/BevelBand.tsx'
import { fillSignedLoss, type InkPaint, newSignedLoss, paintInk, tornRows } from './views/inkMap.ts'
import { LinkedHead } from './views/LinkedHead.tsx'
import { acrossPlot, PlaceMark } from './views/PlaceMark.tsx'
import { heightIn, type Room, type ViewProps } from './views/room.ts'
import './bevel.css'

interface BevelViewProps extends ViewProps {
  readonly palette: Palette
  readonly dot: 'left' | 'right'
}

/** Pixels from node to node: the border of the ink runs between nodes, not from one to the next. */
const FINER = 4
const finer = (nodes: number): number => (nodes - 1) * FINER + 1

type Rgb = readonly [number, number, number]

const rgbOf = (hex: string): Rgb => {
  const value = Number.parseInt(hex.replace('#', ''), 16)
  return [(value >> 16) & 255, (value >> 8) & 255, value & 255]
}

/** A colour as a canvas has it in memory. @param lighter added to each of its parts */
const pixelOf = (colour: Rgb, lighter = 0): number =>
  new Uint32Array(Uint8ClampedArray.of(...colour.map((part) => part + lighter), 255).buffer)[0] as number

/** A fixed figure for a whole number, 0 to 1. */
const chance = (at: number): number => (Math.abs(Math.sin(at * 12.9898)) * 43_758.5453) % 1

/** Fixed streaks of ground steel, a shade for each column: fine scratches over broad ones that run into each other. */
const streak = (x: number): number => {
  const broad = x / BROAD_PX
  const from = Math.floor(broad)
  const across = chance(from + 500) + (broad - from) * (chance(from + 501) - chance(from + 500))
  return 14 * chance(x) + 16 * across - 15
}
const BROAD_PX = 7

const GROUND_LIGHT: Rgb = [172, 176, 174]
const GROUND_DARK: Rgb = [120, 126, 126]

/**
 * The bevel seen square on, edge up; ink in its colour, touch as a dashed outline. In the column it is true in both
 * directions; large it is drawn longer from edge to heel by a factor of its own, as a band is narrow and a blade is wide.
 */
export const BevelView = ({ running, moment, palette, dot, lifted, room }: BevelViewProps) => {
  const t = useTexts()
  const canvas = useRef<HTMLCanvasElement>(null)
  const outline = useRef<SVGRectElement>(null)
  const { shape, job } = running
  const { plotPx } = room
  const signed = useMemo(() => newSignedLoss(shape), [shape])
  const picture = useMemo(() => pictureOf(shape), [shape])
  const paint = useMemo(() => paintOf(finer(shape.acrossCount), palette), [shape, palette])
  const scale = acrossScale(job.blade.widthMm, plotPx)
  const through = throughScale(bevelLengthMm(running), scale, room)
  const heightPx = bevelLengthMm(running) * through.pxPerMm
  const factors = { factor: factorText(scale.factor), through: factorText(through.factor) }

  useEachFrame(running, (frame) => {
    const context = canvas.current?.getContext('2d')
    if (context) {
      fillSignedLoss(signed, frame.vMm, shape)
      paintInk(picture.pixels, signed, paint)
      context.putImageData(picture.image, 0, 0)
    }
    const from = lifted ? -1 : firstTouching(frame.pressureNPerMm)
    const at = (i: number) => ((shape.uMm[i] as number) + job.blade.widthMm / 2) * scale.pxPerMm
    if (from < 0) setSpan(outline.current, -9, 0)
    else setSpan(outline.current, at(from) + 1, Math.max(at(lastTouching(frame.pressureNPerMm)) - at(from) - 2, 2))
  })
  const share = Math.round(100 * moment.inkLeftShare)
  return (
    <section className="grind-view" data-view="bevel">
      <LinkedHead
        view="bevel"
        note={t(through === scale ? 'grind:bevel.note' : 'grind:bevel.noteLonger', factors)}
        end={
          <span className="ink-text">
            <span className="bevel-key" data-key="ink" aria-hidden="true" />
            {t('grind:bevel.ink', { share })}
          </span>
        }
      />
      <div className="bevel-plot" style={{ width: plotPx, height: heightPx }}>
        <canvas
          ref={canvas}
          width={finer(shape.acrossCount)}
          height={finer(shape.throughCount)}
          role="img"
          aria-label={t('grind:bevel.label', { share })}
        />
        <svg className="grind-plot" width={plotPx} height={heightPx} aria-hidden="true">
          {through !== scale && (
            <>
              <ScaleBar xPx={0} yPx={heightPx - BAR_UP_PX} factor={scale.factor} mostPx={BAR_MOST_PX} />
              <ScaleBar xPx={plotPx + 12} yPx={0} factor={through.factor} mostPx={BAR_MOST_PX} upright />
            </>
          )}
          <rect ref={outline} className="grind-touch-outline" y={1} height={Math.max(heightPx - 2, 2)} />
          <PlaceMark
            running={running}
            plot={acrossPlot(job.blade.widthMm, plotPx, heightPx)}
            yPx={heightPx / 2 + 5}
            words={({ inkLeftShare }) => t('grind:bevel.ink', { share: Math.round(100 * inkLeftShare) })}
          />
        </svg>
      </div>
      <div className="bevel-foot" style={{ width: plotPx }}>
        <CornerName name={t('grind:bevel.left')} marked={dot === 'left'} dot={t('grind:bevel.dot')} />
        <BevelLegend />
        <CornerName name={t('grind:bevel.right')} marked={dot === 'right'} dot={t('grind:bevel.dot')} />
      </div>
      <BevelBand running={running} />
    </section>
  )
}

interface CornerNameProps {
  readonly name: string
  readonly marked: boolean
  readonly dot: string
}

const CornerName = ({ name, marked, dot }: CornerNameProps) => (
  <span className="corner-name">
    {name}
    {marked && (
      <>
        <svg width={12} height={12} aria-hidden="true">
          <circle cx={6} cy={6} r={5} />
        </svg>
        <span>{dot}</span>
      </>
    )}
  </span>
)

/** Longest scale bar beside a bevel drawn longer, and how far the one across stands above the heel (px). */
const BAR_MOST_PX = 80
const BAR_UP_PX = 16

/** In the column as across; in the model's place the largest round factor with which edge and heel are in sight, if it is larger. */
const throughScale = (lengthMm: number, across: Scale, room: Room): Scale => {
  const longer = depthScale(lengthMm, heightIn(room, 0))
  return room.heightPx !== null && longer.factor > across.factor ? longer : across
}

/** From edge to heel along the bevel's middle, as it was at the start. */
const bevelLengthMm = ({ shape }: Running): number => {
  const { throughCount, acrossCount, vStartMm, nMm } = shape
  const column = Math.floor(acrossCount / 2) * throughCount
  const riseMm = (vStartMm[column + throughCount - 1] as number) - (vStartMm[column] as number)
  return Math.hypot(riseMm, nMm[throughCount - 1] as number)
}

/** The picture of a grid, with its pixels as one number each. */
const pictureOf = ({ acrossCount, throughCount }: RunShape) => {
  const image = new ImageData(finer(acrossCount), finer(throughCount))
  return { image, pixels: new Uint32Array(image.data.buffer) }
}

const paintOf = (width: number, { ink, dark }: Palette): InkPaint => {
  const columns = Array.from({ length: width }, (_, x) => x)
  const ground = dark ? GROUND_DARK : GROUND_LIGHT
  return {
    finer: FINER,
    ink: pixelOf(rgbOf(ink)),
    ground: Uint32Array.from(columns, (x) => pixelOf(ground, streak(x))),
    tornRows: Float64Array.from(columns, tornRows),
  }
}
