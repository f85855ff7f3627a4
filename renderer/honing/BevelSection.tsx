import { useRef } from 'react'
import type { Report } from '../../geometry/report.ts'
import { radFromDeg } from '../../geometry/units.ts'
import { lineOf, type Place } from '../glass/glassLayout.ts'
import { ScaleBar } from '../ui/ScaleBar.tsx'
import { factorFor, PX_PER_MM } from '../ui/scale.ts'
import { useTexts } from '../ui/texts.tsx'
import { useBox } from '../ui/useBox.ts'
import { useFigures } from '../ui/useFigure.ts'
import type { HonedBevel } from './bevel.ts'

interface BevelSectionProps {
  readonly report: Report
  readonly honedDeg: number
  readonly setBackMm: number
  readonly honed: HonedBevel
}

const BEFORE = { widthPx: 420, heightPx: 260 }
const LEAST_PX = 260
const MARGIN_PX = 20
const FACTORS = [5, 10, 20, 30, 40, 50] as const
const POINTS = 40

/** The bevel in section, true to scale: hollow from the wheel, flat from the stone, and the edge that was. */
export const BevelSection = ({ report, honedDeg, setBackMm, honed }: BevelSectionProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const paper = useRef<HTMLElement>(null)
  const roomPx = Math.max(LEAST_PX, useBox(paper, BEFORE).widthPx)
  const { hollow, job, setUp } = report
  const { thicknessMm } = job.blade
  const heelMm = hollow.chordMm * Math.cos(radFromDeg(hollow.chordAngleDeg))
  const factor = factorFor(FACTORS, heelMm * 1.25, roomPx - 2 * MARGIN_PX)
  const each = factor * PX_PER_MM
  const heightPx = thicknessMm * each + 3 * MARGIN_PX
  /** v to the right from the edge, n up from the back. */
  const place = (v: number, n: number): Place => [MARGIN_PX + v * each, heightPx - MARGIN_PX - n * each]
  const radius = job.station.wheelDiameterMm / 2
  const bevelRad = radFromDeg(setUp.bevelAngleDeg)
  const rim = (n: number): number => {
    const across = n - radius * Math.cos(bevelRad)
    return Math.sqrt(radius * radius - across * across) - radius * Math.sin(bevelRad)
  }
  const widthMm = honed.widthMm ?? 0
  const [topV, topN] = [setBackMm + widthMm * Math.cos(radFromDeg(honedDeg)), widthMm * Math.sin(radFromDeg(honedDeg))]
  const levels = Array.from({ length: POINTS + 1 }, (_, k) => topN + ((thicknessMm - topN) * k) / POINTS)
  const hollowLine = levels.map((n) => place(rim(n), n))
  const end = heelMm * 1.25
  const label = t('honing:section.label', { honed: inWords(honedDeg, 'deg', 1), width: inWords(widthMm, 'mm', 2) })
  return (
    <figure className="honing-section" ref={paper}>
      <svg className="drawing" width={roomPx} height={heightPx} role="img" aria-label={label}>
        <path
          className="steel honing-steel"
          d={`${lineOf([place(setBackMm, 0), place(topV, topN), ...hollowLine, place(end, thicknessMm), place(end, 0)])}Z`}
        />
        <path className="datum" d={lineOf([place(0, 0), place(topV, topN)])} />
        {honed.widthMm !== null && <path className="now" d={lineOf([place(setBackMm, 0), place(topV, topN)])} />}
        <path className="axis" d={lineOf([place(0, 0), place(heelMm, thicknessMm)])} />
        <ScaleBar xPx={roomPx - 140} yPx={heightPx - 14} factor={factor} mostPx={100} />
      </svg>
      <figcaption className="muted">{t('honing:section.caption', { factor })}</figcaption>
    </figure>
  )
}
