import { type PointerEvent, useCallback } from 'react'
import type { Frame, RunShape } from '../../worker/protocol.ts'
import { type Running, useReading } from '../useLiveGrind.ts'
import { keepPlace, pointAtPlace, useViewing } from '../viewing.ts'
import { markedPlace, type PlaceFigures, placeFigures } from './place.ts'
import './place.css'

/** Where a view has the places of the blade. */
export interface AcrossPlot {
  readonly widthPx: number
  readonly heightPx: number
  xPx(uMm: number): number
  uMm(xPx: number): number
}

/** @returns the plot of a view that the whole blade fills from left to right */
export const acrossPlot = (widthMm: number, plotPx: number, heightPx: number): AcrossPlot => ({
  widthPx: plotPx,
  heightPx,
  xPx: (uMm) => (uMm / widthMm + 0.5) * plotPx,
  uMm: (xPx) => (xPx / plotPx - 0.5) * widthMm,
})

interface PlaceMarkProps {
  readonly running: Running
  readonly plot: AcrossPlot
  /** What the view says of a place, as written beside the mark. */
  readonly words: (place: PlaceFigures) => string
  /** Base line of the words (px). */
  readonly yPx?: number
}

/** Takes the place pointed at or tapped, and marks the one that is marked in all views; part of a view's drawing. */
export const PlaceMark = (props: PlaceMarkProps) => {
  const { running, plot } = props
  const uMm = useViewing((viewing) => viewing.markedUMm)
  const point = (event: PointerEvent<SVGRectElement>): void => {
    const box = event.currentTarget.getBoundingClientRect()
    const place = markedPlace(plot.uMm(event.clientX - box.left), running.job.blade.widthMm)
    // A finger does not leave: what it tapped stays.
    if (event.pointerType === 'mouse') pointAtPlace(place)
    else keepPlace(place)
  }
  return (
    <g className="place-mark">
      {uMm !== null && <Mark {...props} uMm={uMm} />}
      <rect
        className="place-catch"
        width={plot.widthPx}
        height={plot.heightPx}
        onPointerDown={point}
        onPointerMove={(event) => event.pointerType === 'mouse' && point(event)}
        onPointerLeave={(event) => event.pointerType === 'mouse' && pointAtPlace(null)}
      />
    </g>
  )
}

/** Words stand this far beside the mark (px), and this high by themselves. */
const BESIDE_PX = 6
const WORDS_Y_PX = 14
/** Nearer to the right end than this, they stand left of it (share of the width). */
const RIGHT_SHARE = 0.66

const Mark = ({ running, plot, words, yPx, uMm }: PlaceMarkProps & { readonly uMm: number }) => {
  const read = useCallback((frame: Frame, shape: RunShape) => placeFigures(frame, shape, uMm), [uMm])
  const place = useReading(running, read)
  const x = plot.xPx(uMm)
  const leftwards = x > plot.widthPx * RIGHT_SHARE
  return (
    <>
      <path className="place-line" d={`M${x} 0V${plot.heightPx}`} />
      <text
        data-place
        x={leftwards ? x - BESIDE_PX : x + BESIDE_PX}
        y={yPx ?? WORDS_Y_PX}
        textAnchor={leftwards ? 'end' : 'start'}
      >
        {words(place)}
      </text>
    </>
  )
}
