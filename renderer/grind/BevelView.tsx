import { useMemo, useRef } from 'react'
import { INK_THICKNESS_MM } from '../../geometry/ink.ts'
import { useTexts } from '../ui/texts.tsx'
import { acrossScale, factorText } from './glassScale.ts'
import { touchingColumns } from './touching.ts'
import { type Running, useEachFrame } from './useLiveGrind.ts'
import type { Palette } from './useScreen.ts'
import { BevelBand, BevelLegend } from './views/BevelBand.tsx'
import { fillSignedLoss, newSignedLoss, type SignedLoss, signedLossAt, tornRows } from './views/inkMap.ts'
import { LinkedHead } from './views/LinkedHead.tsx'
import { acrossPlot, PlaceMark } from './views/PlaceMark.tsx'
import type { ViewProps } from './views/room.ts'
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

/** Fixed streaks of ground steel, a shade for each column. */
const streak = (x: number): number => 14 * ((Math.abs(Math.sin(x * 12.9898)) * 43_758.5453) % 1) - 7

const GROUND_LIGHT: Rgb = [172, 176, 174]
const GROUND_DARK: Rgb = [120, 126, 126]

/** The bevel seen square on, true in both directions, edge up; ink in its colour, touch as a dashed outline. */
export const BevelView = ({ running, moment, palette, dot, lifted, room }: BevelViewProps) => {
  const t = useTexts()
  const canvas = useRef<HTMLCanvasElement>(null)
  const image = useRef<ImageData | null>(null)
  const outline = useRef<SVGRectElement>(null)
  const { shape, job } = running
  const { plotPx } = room
  const signed = useMemo(() => newSignedLoss(shape), [shape])
  const scale = acrossScale(job.blade.widthMm, plotPx)
  const heightPx = bevelLengthMm(running) * scale.pxPerMm
  const colours = { ink: rgbOf(palette.ink), ground: palette.dark ? GROUND_DARK : GROUND_LIGHT }

  useEachFrame(running, (frame) => {
    const context = canvas.current?.getContext('2d')
    if (context) {
      image.current = sized(image.current, finer(shape.acrossCount), finer(shape.throughCount))
      fillSignedLoss(signed, frame.vMm, shape)
      paint(image.current, signed, colours.ink, colours.ground)
      context.putImageData(image.current, 0, 0)
    }
    const columns = lifted ? null : touchingColumns(frame.pressureNPerMm)
    const at = (i: number) => ((shape.uMm[i] as number) + job.blade.widthMm / 2) * scale.pxPerMm
    outline.current?.setAttribute('x', String(columns ? at(columns[0]) + 1 : -9))
    outline.current?.setAttribute('width', String(columns ? Math.max(at(columns[1]) - at(columns[0]) - 2, 2) : 0))
  })
  const share = Math.round(100 * moment.inkLeftShare)
  return (
    <section className="grind-view" data-view="bevel">
      <LinkedHead
        view="bevel"
        note={t('grind:bevel.note', { factor: factorText(scale.factor) })}
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

/** From edge to heel along the bevel's middle, as it was at the start. */
const bevelLengthMm = ({ shape }: Running): number => {
  const { throughCount, acrossCount, vStartMm, nMm } = shape
  const column = Math.floor(acrossCount / 2) * throughCount
  const riseMm = (vStartMm[column + throughCount - 1] as number) - (vStartMm[column] as number)
  return Math.hypot(riseMm, nMm[throughCount - 1] as number)
}

/** The picture's pixels, made afresh only where the grid has changed. */
const sized = (image: ImageData | null, width: number, height: number): ImageData =>
  image?.width === width && image.height === height ? image : new ImageData(width, height)

const paint = (image: ImageData, signed: SignedLoss, ink: Rgb, ground: Rgb): void => {
  const { data, width, height } = image
  const lastRow = signed.throughCount - 1
  for (let x = 0; x < width; x++) {
    const torn = tornRows(x)
    for (let y = 0; y < height; y++) {
      const through = Math.min(Math.max(y / FINER + torn, 0), lastRow)
      const inked = signedLossAt(signed, x / FINER, through) <= INK_THICKNESS_MM
      const pixel = 4 * (y * width + x)
      for (let c = 0; c < 3; c++) data[pixel + c] = inked ? (ink[c] as number) : (ground[c] as number) + streak(x)
      data[pixel + 3] = 255
    }
  }
}
