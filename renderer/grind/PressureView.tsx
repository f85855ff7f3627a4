import { useRef } from 'react'
import { fixed } from '../../main/contract/figures.ts'
import { fullPressureNPerMm } from '../scene/pressure.ts'
import { roundUpTo } from '../ui/scale.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { moveTo, usePointRow } from './pointRow.ts'
import { firstTouching, lastTouching } from './touching.ts'
import { useEachFrame } from './useLiveGrind.ts'
import { Stations } from './Views.tsx'
import { LinkedHead } from './views/LinkedHead.tsx'
import { acrossPlot, PlaceMark } from './views/PlaceMark.tsx'
import { heightIn, type ViewProps } from './views/room.ts'

const HEIGHT_PX = 46
/** Load places nearer than this to the middle read as in the middle (mm). */
const MIDDLE_MM = 0.5

/** Free room above the scale's end (px). */
const ABOVE_PX = 4

const pressureYPx = (nPerMm: number, full: number, heightPx: number): number =>
  heightPx - Math.min(nPerMm / full, 1) * (heightPx - ABOVE_PX)

interface PressureScaleProps {
  /** Pressure at the scale's end (N/mm). */
  readonly full: number
  readonly plotPx: number
  readonly heightPx: number
}

/** Where there is room: lines at even pressures, each with its figure. */
const PressureScale = ({ full, plotPx, heightPx }: PressureScaleProps) => {
  const t = useTexts()
  const step = roundUpTo(full / 2)
  const lines = Array.from({ length: Math.floor(full / step) }, (_, k) => (k + 1) * step)
  return lines.map((nPerMm) => {
    const yPx = pressureYPx(nPerMm, full, heightPx)
    return (
      <g key={nPerMm}>
        <path className="grind-stations" d={`M0 ${yPx}H${plotPx}`} />
        <text x={plotPx + 8} y={yPx + 5}>
          {t('views:pressure.at', { pressure: fixed(nPerMm, step < 1 ? 1 : 0) })}
        </text>
      </g>
    )
  })
}

/** Pressure along the edge: a filled curve, the load's arrow, and what they say. */
export const PressureView = ({ running, moment, lifted, room }: ViewProps) => {
  const { plotPx } = room
  const heightPx = heightIn(room, HEIGHT_PX)
  const t = useTexts()
  const { inWords } = useFigures()
  const body = usePointRow<SVGPolygonElement>()
  const arrow = useRef<SVGGElement>(null)
  const { shape, job } = running
  const half = job.blade.widthMm / 2
  const pxPerMm = plotPx / job.blade.widthMm

  const full = fullPressureNPerMm(job)
  useEachFrame(running, ({ pressureNPerMm, loadPlaceMm }) => {
    const from = lifted ? -1 : firstTouching(pressureNPerMm)
    const to = from < 0 ? -2 : lastTouching(pressureNPerMm)
    const x = (i: number): number => ((shape.uMm[i] as number) + half) * pxPerMm
    body.start()
    if (from >= 0) body.add(x(from), heightPx)
    for (let i = from; i <= to; i++) body.add(x(i), pressureYPx(pressureNPerMm[i] as number, full, heightPx))
    if (from >= 0) body.add(x(to), heightPx)
    body.end()
    moveTo(arrow.current, (loadPlaceMm + half) * pxPerMm, 0)
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
          most: fixed(moment.mostPressureNPerMm, 1),
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
        {room.heightPx !== null && <PressureScale full={full} plotPx={plotPx} heightPx={heightPx} />}
        <polygon ref={body.ref} className="grind-touch-body" />
        <path className="datum-line" d={`M0 ${heightPx - 0.5}H${plotPx}`} />
        <g ref={arrow} className="load-arrow" visibility={nothing === null ? 'visible' : 'hidden'}>
          <path d={`M0 4V${heightPx - 10}`} />
          <path d={`M-4 ${heightPx - 12}L0 ${heightPx - 2}L4 ${heightPx - 12}Z`} className="head" />
        </g>
        <PlaceMark
          running={running}
          plot={acrossPlot(job.blade.widthMm, plotPx, heightPx)}
          words={(place) => t('views:pressure.at', { pressure: fixed(lifted ? 0 : place.pressureNPerMm, 1) })}
        />
      </svg>
      <p className={nothing === null ? 'grind-view-line touch-text' : 'grind-view-line'}>{touching}</p>
    </section>
  )
}
