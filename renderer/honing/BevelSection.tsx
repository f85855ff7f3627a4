import { useRef } from 'react'
import { lineOf, type Place } from '../glass/glassLayout.ts'
import { ScaleBar } from '../ui/ScaleBar.tsx'
import { factorFor, PX_PER_MM } from '../ui/scale.ts'
import { useTexts } from '../ui/texts.tsx'
import { useBox } from '../ui/useBox.ts'
import { useFigures } from '../ui/useFigure.ts'
import { type Hollowed, honedBevel } from './bevel.ts'
import { type Section, type SectionPoint, sectionOf } from './section.ts'

interface BevelSectionProps {
  readonly hollowed: Hollowed
  readonly honedDeg: number
  readonly setBackMm: number
}

const BEFORE = { widthPx: 420, heightPx: 260 }
const LEAST_PX = 260
const MARGIN_PX = 20
const FACTORS = [5, 10, 20, 30, 40, 50] as const
/** Room behind the heel, so that the upper face shows, as a share of the bevel. */
const BEHIND_SHARE = 1.25

/** The bevel in section, true to scale: hollow from the wheel, flat from the stone, and the edge that was; its tip once more, larger. */
export const BevelSection = ({ hollowed, honedDeg, setBackMm }: BevelSectionProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const paper = useRef<HTMLDivElement>(null)
  const roomPx = Math.max(LEAST_PX, useBox(paper, BEFORE).widthPx)
  const honed = honedBevel(hollowed, honedDeg, setBackMm)
  const section = sectionOf(hollowed, honedDeg, setBackMm, honed)
  const { thicknessMm } = hollowed.job.blade
  const endMm = Math.max(section.heelMm, section.bevel.at(-1)?.[0] ?? 0) * BEHIND_SHARE
  const factor = factorFor(FACTORS, endMm, roomPx - 2 * MARGIN_PX)
  const heightPx = thicknessMm * factor * PX_PER_MM + 3 * MARGIN_PX
  const place = placing(factor, heightPx - MARGIN_PX, MARGIN_PX)
  const width = honed.kind === 'onHeel' ? '' : inWords(honed.widthMm, 'mm', 2)
  const label = t(`honing:section.label.${honed.kind}`, { honed: inWords(honedDeg, 'deg', 1), width })
  return (
    <div className="honing-section" ref={paper}>
      <figure>
        <svg className="drawing" width={roomPx} height={heightPx} role="img" aria-label={label}>
          <Steel section={section} place={place} corner={[endMm, thicknessMm]} />
          <path className="axis" d={lineOf([place([0, 0]), place([section.heelMm, thicknessMm])])} />
          <ScaleBar xPx={roomPx - 140} yPx={heightPx - 14} factor={factor} mostPx={100} />
        </svg>
        <figcaption className="muted">{t('honing:section.caption', { factor })}</figcaption>
      </figure>
      <Tip section={section} roomPx={roomPx} sectionFactor={factor} />
    </div>
  )
}

type Placing = (point: SectionPoint) => Place

const placing =
  (factor: number, backPx: number, edgePx: number): Placing =>
  ([v, n]) => [edgePx + v * factor * PX_PER_MM, backPx - n * factor * PX_PER_MM]

interface SteelProps {
  readonly section: Section
  readonly place: Placing
  /** Where the drawing ends, above. */
  readonly corner: SectionPoint
}

const Steel = ({ section, place, corner }: SteelProps) => {
  const { bevel, ground, flats } = section
  const around = [...bevel, corner, [corner[0], 0] as const]
  return (
    <>
      <path className="steel honing-steel" d={`${lineOf(around.map(place))}Z`} />
      <path className="datum" d={lineOf(ground.map(place))} />
      {flats.length > 0 && <path className="now" d={flats.map((flat) => lineOf(flat.map(place))).join('')} />}
    </>
  )
}

const TIP_FACTORS = [10, 20, 50, 100, 200, 500, 1000] as const
const TIP_MOST_PX = 320
const TIP_HEIGHT_PX = 170
/** Of the tip's room the flat takes about this much. */
const FLAT_SHARE = 0.6

interface TipProps {
  readonly section: Section
  readonly roomPx: number
  readonly sectionFactor: number
}

/** The tip alone, so much larger that the flat can be seen; nothing where there is no flat, or where it can be seen as it is. */
const Tip = ({ section, roomPx, sectionFactor }: TipProps) => {
  const t = useTexts()
  const flat = section.flats[0]
  if (!flat) return null
  const widthPx = Math.min(TIP_MOST_PX, roomPx)
  const [topV, topN] = flat[1]
  const [acrossPx, upPx] = [widthPx - 2 * MARGIN_PX, TIP_HEIGHT_PX - 3 * MARGIN_PX]
  const factor = factorFor(TIP_FACTORS, Math.max(topV, (topN * acrossPx) / upPx), FLAT_SHARE * acrossPx)
  if (factor <= sectionFactor) return null
  const place = placing(factor, TIP_HEIGHT_PX - MARGIN_PX, MARGIN_PX)
  const far: SectionPoint = [section.heelMm * 2, section.bevel.at(-1)?.[1] ?? 0]
  return (
    <figure>
      <svg
        className="drawing honing-tip"
        width={widthPx}
        height={TIP_HEIGHT_PX}
        role="img"
        aria-label={t('honing:section.tipLabel')}
      >
        <Steel section={section} place={place} corner={far} />
        <ScaleBar xPx={MARGIN_PX} yPx={12} factor={factor} mostPx={acrossPx / 3} />
      </svg>
      <figcaption className="muted">{t('honing:section.tip', { factor })}</figcaption>
    </figure>
  )
}
