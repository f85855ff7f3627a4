import { useRef } from 'react'
import { fullPressureNPerMm } from '../scene/pressure.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import type { Frame } from '../worker/protocol.ts'
import { touchingColumns } from './touching.ts'
import { useEachFrame } from './useLiveGrind.ts'
import { Stations } from './Views.tsx'
import { LinkedHead } from './views/LinkedHead.tsx'
import { acrossPlot, PlaceMark } from './views/PlaceMark.tsx'
import { heightIn, type ViewProps } from './views/room.ts'

const HEIGHT_PX = 46
/** Load places nearer than this to the middle read as in the middle (mm). */
const MIDDLE_MM = 0.5

/** Pressure along the edge: a filled curve, the load's arrow, and what they say. */
export const PressureView = ({ running, moment, lifted, room }: ViewProps) => {
  const { plotPx } = room
  const heightPx = heightIn(room, HEIGHT_PX)
  const t = useTexts()
  const { inWords } = useFigures()
  const body = useRef<SVGPathElement>(null)
  const arrow = useRef<SVGGElement>(null)
  const { shape, job } = running
  const half = job.blade.widthMm / 2
  const pxPerMm = plotPx / job.blade.widthMm

  useEachFrame(running, (frame) => {
    body.current?.setAttribute(
      'd',
      lifted ? '' : bodyPath(frame, shape.uMm, half, pxPerMm, heightPx, fullPressureNPerMm(job)),
    )
    arrow.current?.setAttribute('transform', `translate(${(frame.loadPlaceMm + half) * pxPerMm} 0)`)
  })
  const load = inWords(job.motion.loadN, 'N', 0)
  const place = inWords(Math.abs(moment.loadPlaceMm), 'mm', 0)
  const centred =
    Math.abs(moment.loadPlaceMm) < MIDDLE_MM ? 'centred' : moment.loadPlaceMm < 0 ? 'centredLeft' : 'centredRight'
  const nothing = lifted ? 'lifted' : moment.step === 0 ? 'nothing' : null
  const touching =
    nothing === null
      ? t('grind:pressure.touching', {
          width: inWords(moment.touchingMm, 'mm', 0),
          most: moment.mostPressureNPerMm.toFixed(1),
        })
      : t(`grind:pressure.${nothing}`)
  return (
    <section className="grind-view" data-view="pressure">
      <LinkedHead
        view="pressure"
        note={nothing === null ? t(`grind:pressure.${centred}`, { load, place }) : t('grind:pressure.note')}
      />
      <svg
        width={plotPx}
        height={heightPx}
        role="img"
        aria-label={t('grind:pressure.label', { sentence: touching })}
        className="grind-plot"
      >
        <Stations plotPx={plotPx} heightPx={heightPx} />
        <path ref={body} className="grind-touch-body" />
        <path className="datum-line" d={`M0 ${heightPx - 0.5}H${plotPx}`} />
        <g ref={arrow} className="load-arrow" visibility={nothing === null ? 'visible' : 'hidden'}>
          <path d={`M0 4V${heightPx - 10}`} />
          <path d={`M-4 ${heightPx - 12}L0 ${heightPx - 2}L4 ${heightPx - 12}Z`} className="head" />
        </g>
        <PlaceMark
          running={running}
          plot={acrossPlot(job.blade.widthMm, plotPx, heightPx)}
          words={(place) => t('views:pressure.at', { pressure: (lifted ? 0 : place.pressureNPerMm).toFixed(1) })}
        />
      </svg>
      <p className={nothing === null ? 'grind-view-line touch-text' : 'grind-view-line'}>{touching}</p>
    </section>
  )
}

const bodyPath = (
  frame: Frame,
  uMm: Float64Array,
  half: number,
  pxPerMm: number,
  heightPx: number,
  full: number,
): string => {
  const touching = touchingColumns(frame.pressureNPerMm)
  if (!touching) return ''
  const x = (i: number): string => (((uMm[i] as number) + half) * pxPerMm).toFixed(1)
  const [first, last] = touching
  let path = `M${x(first)} ${heightPx}`
  for (let i = first; i <= last; i++) {
    const share = Math.min((frame.pressureNPerMm[i] as number) / full, 1)
    path += `L${x(i)} ${(heightPx - share * (heightPx - 4)).toFixed(1)}`
  }
  return `${path}L${x(last)} ${heightPx}Z`
}
