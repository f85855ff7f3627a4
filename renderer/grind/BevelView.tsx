import { useRef } from 'react'
import { INK_THICKNESS_MM } from '../../geometry/ink.ts'
import { useTexts } from '../ui/texts.tsx'
import type { Frame } from '../worker/protocol.ts'
import { acrossScale, factorText } from './glassScale.ts'
import { touchingColumns } from './touching.ts'
import { type Moment, type Running, useEachFrame } from './useLiveGrind.ts'
import type { Palette } from './useScreen.ts'
import { ViewHead } from './Views.tsx'
import './bevel.css'

interface BevelViewProps {
  readonly running: Running
  readonly moment: Moment
  readonly palette: Palette
  readonly dot: 'left' | 'right'
  readonly lifted: boolean
  readonly plotPx: number
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
export const BevelView = ({ running, moment, palette, dot, lifted, plotPx }: BevelViewProps) => {
  const t = useTexts()
  const canvas = useRef<HTMLCanvasElement>(null)
  const image = useRef<ImageData | null>(null)
  const outline = useRef<SVGRectElement>(null)
  const { shape, job } = running
  const scale = acrossScale(job.blade.widthMm, plotPx)
  const heightPx = bevelLengthMm(running) * scale.pxPerMm
  const colours = { ink: rgbOf(palette.ink), ground: palette.dark ? GROUND_DARK : GROUND_LIGHT }

  useEachFrame(running, (frame) => {
    const context = canvas.current?.getContext('2d')
    if (context) {
      image.current = sized(image.current, finer(shape.acrossCount), finer(shape.throughCount))
      paint(image.current, running, frame, colours.ink, colours.ground)
      context.putImageData(image.current, 0, 0)
    }
    const columns = lifted ? null : touchingColumns(frame.pressureNPerMm)
    const at = (i: number) => ((shape.uMm[i] as number) + job.blade.widthMm / 2) * scale.pxPerMm
    outline.current?.setAttribute('x', String(columns ? at(columns[0]) + 1 : -9))
    outline.current?.setAttribute('width', String(columns ? Math.max(at(columns[1]) - at(columns[0]) - 2, 2) : 0))
  })
  const share = Math.round(100 * moment.inkLeftShare)
  return (
    <section className="grind-view">
      <ViewHead
        heading={t('grind:bevel.heading')}
        note={t('grind:bevel.note', { factor: factorText(scale.factor) })}
        end={<span className="ink-text">{t('grind:bevel.ink', { share })}</span>}
      />
      <div className="bevel-plot" style={{ width: plotPx, height: heightPx }}>
        <canvas
          ref={canvas}
          width={finer(shape.acrossCount)}
          height={finer(shape.throughCount)}
          role="img"
          aria-label={t('grind:bevel.label', { share })}
        />
        <svg width={plotPx} height={heightPx} aria-hidden="true">
          <rect ref={outline} className="grind-touch-outline" y={1} height={Math.max(heightPx - 2, 2)} />
        </svg>
      </div>
      <div className="bevel-foot" style={{ width: plotPx }}>
        <CornerName name={t('grind:bevel.left')} marked={dot === 'left'} dot={t('grind:bevel.dot')} />
        <span>{t('grind:bevel.middle')}</span>
        <CornerName name={t('grind:bevel.right')} marked={dot === 'right'} dot={t('grind:bevel.dot')} />
      </div>
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

/** Loss at a pixel, straight between the four nodes round it (mm). */
const lostAt = ({ shape }: Running, vMm: Float64Array, across: number, through: number): number => {
  const { acrossCount, throughCount, vStartMm } = shape
  const i = Math.min(Math.floor(across), acrossCount - 2)
  const j = Math.min(Math.floor(through), throughCount - 2)
  const lost = (node: number): number => (vMm[node] as number) - (vStartMm[node] as number)
  const at = i * throughCount + j
  const [p, q] = [across - i, through - j]
  const left = lost(at) * (1 - q) + lost(at + 1) * q
  return left * (1 - p) + (lost(at + throughCount) * (1 - q) + lost(at + throughCount + 1) * q) * p
}

const paint = (image: ImageData, running: Running, frame: Frame, ink: Rgb, ground: Rgb): void => {
  const { data, width, height } = image
  for (let x = 0; x < width; x++) {
    for (let y = 0; y < height; y++) {
      const inked = lostAt(running, frame.vMm, x / FINER, y / FINER) <= INK_THICKNESS_MM
      const pixel = 4 * (y * width + x)
      for (let c = 0; c < 3; c++) data[pixel + c] = inked ? (ink[c] as number) : (ground[c] as number) + streak(x)
      data[pixel + 3] = 255
    }
  }
}
