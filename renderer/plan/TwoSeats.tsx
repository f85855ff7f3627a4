import { useState } from 'react'
import { radiusOfRelief } from '../../geometry/aim.ts'
import type { Report } from '../../geometry/report.ts'
import { radFromDeg } from '../../geometry/units.ts'
import type { Tool } from '../../main/contract/entities.ts'
import { fixed } from '../../main/contract/figures.ts'
import { useApp } from '../app/store.ts'
import { lineOf, type Place, steps } from '../glass/glassLayout.ts'
import { wantedDepthMm } from '../glass/wantedDepth.ts'
import { SelectEntry } from '../ui/Entry.tsx'
import { DEPTH, factorFor, PX_PER_MM } from '../ui/scale.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'

const WIDTH_PX = 132
const HEIGHT_PX = 84
const TOP_PX = 8
const POINTS = 40

const reliefAt = (woodReliefMm: number, seatAngleDeg: number): number =>
  woodReliefMm / Math.sin(radFromDeg(seatAngleDeg))

const hasSeat = <T extends Tool>(tool: T): tool is T & { seatAngleDeg: number } => tool.seatAngleDeg !== null

/** The same camber in the wood, by two irons at different seats, drawn in one scale. */
export const TwoSeats = ({ tool, report }: { readonly tool: Tool; readonly report: Report }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const tools = useApp((app) => app.tools)
  const [chosen, setChosen] = useState<string | null>(null)
  const { woodReliefMm } = report.plan
  const others = tools.filter(hasSeat).filter((each) => each.id !== tool.id && each.seatAngleDeg !== tool.seatAngleDeg)
  const other = others.find(({ id }) => id === chosen) ?? others[0]
  if (!hasSeat(tool) || !other || woodReliefMm === null || woodReliefMm === 0) return null
  const [here, there] = [tool, other].map((each) => reliefAt(woodReliefMm, each.seatAngleDeg)) as [number, number]
  const factor = factorFor(DEPTH, Math.max(here, there), HEIGHT_PX - TOP_PX - 12)
  const times = Math.max(here, there) / Math.min(here, there)
  return (
    <section aria-label={t('plan:seats.name')}>
      <h2>{t('plan:seats.name')}</h2>
      <div className="two-seats">
        <Seat tool={tool} reliefMm={here} factor={factor} />
        <Seat tool={other} reliefMm={there} factor={factor} />
      </div>
      <p>
        {t('plan:seats.says', {
          camber: inWords(woodReliefMm, 'mm', 2),
          low: inWords(Math.max(here, there), 'mm', 2),
          high: inWords(Math.min(here, there), 'mm', 2),
          times: fixed(times, 1),
        })}
      </p>
      <SelectEntry
        name={t('plan:seats.other')}
        value={other.id}
        options={others.map((each) => ({
          value: each.id,
          name: `${each.code} ${each.name}, ${inWords(each.seatAngleDeg, 'deg', 0)}`,
        }))}
        onChange={setChosen}
      />
      <p className="muted">{t('plan:seats.scale', { depth: factor })}</p>
    </section>
  )
}

interface SeatProps {
  readonly tool: Tool & { seatAngleDeg: number }
  readonly reliefMm: number
  readonly factor: number
}

const Seat = ({ tool, reliefMm, factor }: SeatProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const radiusMm = radiusOfRelief(tool.widthMm, reliefMm)
  const curve = steps(POINTS).map(
    (share): Place => [
      WIDTH_PX / 2 + (share * WIDTH_PX) / 2,
      TOP_PX + wantedDepthMm(radiusMm, (share * tool.widthMm) / 2) * factor * PX_PER_MM,
    ],
  )
  const words = { seat: inWords(tool.seatAngleDeg, 'deg', 0), relief: inWords(reliefMm, 'mm', 2) }
  return (
    <figure>
      <svg className="drawing" width={WIDTH_PX} height={HEIGHT_PX} role="img" aria-label={t('plan:seats.label', words)}>
        <path className="steel" d={`${lineOf(curve)}V${HEIGHT_PX}H0Z`} />
        <path className="datum" d={`M0 ${TOP_PX}H${WIDTH_PX}`} />
        <path className="wanted-line" d={lineOf(curve)} />
      </svg>
      <figcaption>{t('plan:seats.caption', words)}</figcaption>
    </figure>
  )
}
