import { useCallback, useMemo } from 'react'
import { hollowOf } from '../../../geometry/hollow.ts'
import { bevelAngles } from '../../../geometry/protractor.ts'
import { degFromRad } from '../../../geometry/units.ts'
import { machineFigures, setUpTiltRad } from '../../scene/placement.ts'
import '../../setUp/setUp.css'
import { ScaleBar } from '../../ui/ScaleBar.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { type Figures, useFigures } from '../../ui/useFigure.ts'
import type { Frame, RunShape } from '../../worker/protocol.ts'
import { factorText } from '../glassScale.ts'
import { sectionAt } from '../tools/steel.ts'
import { type Running, useReading } from '../useLiveGrind.ts'
import { OUTSIDE_PX } from '../Views.tsx'
import { useViewing } from '../viewing.ts'
import { LinkedHead } from './LinkedHead.tsx'
import { liveTriangle } from './liveTriangle.ts'
import { heightIn, type ViewProps } from './room.ts'
import { type Lengths, Machine, Near, type Plan, SideFigures } from './SectionParts.tsx'
import { sectionPlan } from './sectionLayout.ts'
import { usePlaceName } from './usePlaceName.ts'
import './section.css'

const HEIGHT_PX = 266
const BAR_MOST_PX = 70
/** Narrower than this, lengths have no room beside their sides (px). */
const LENGTHS_PX = 700

/** The section along the wheel, true to scale, at the place marked or in the middle; beside it the edge, magnified. */
export const SectionView = ({ running, moment, lifted, room }: ViewProps) => {
  const t = useTexts()
  const figures = useFigures()
  const placeName = usePlaceName()
  const { setUp } = running
  const uMm = useViewing((viewing) => viewing.markedUMm) ?? 0
  const heightPx = heightIn(room, HEIGHT_PX)
  const widthPx = room.plotPx + OUTSIDE_PX
  const plan = useMemo(() => planOf(running, widthPx, heightPx), [running, widthPx, heightPx])
  const read = useCallback((frame: Frame, shape: RunShape) => anglesAt(frame, shape, uMm), [uMm])
  const angles = useReading(running, read)
  const words = wordsOf(figures, { ...angles, tiltRad: moment.tiltRad })
  const place = placeName(uMm)
  const line = t(lifted ? 'views:section.lifted' : 'views:section.line', { ...words, place })
  const factors = { machine: factorText(plan.machine.scale), near: factorText(plan.nearFactor) }
  const [barX, barY] = plan.machine.px(plan.still.bar)
  const barRadiusPx = (setUp.barRadiusMm * plan.machine.radiusPx) / setUp.wheelRadiusMm
  return (
    <section className="grind-view" data-view="section">
      <LinkedHead view="section" note={t('views:section.note', { scale: factors.machine, near: factors.near })} />
      <svg
        className="drawing grind-section"
        width={widthPx}
        height={heightPx}
        role="img"
        aria-label={t('views:section.label', { ...words, place })}
      >
        <Machine running={running} plan={plan} uMm={uMm} />
        <circle className="bar" cx={barX} cy={barY} r={barRadiusPx} />
        <Near running={running} plan={plan} uMm={uMm} />
        <SideFigures plan={plan} tip={words.tip} lengths={widthPx < LENGTHS_PX ? null : lengthsOf(figures, running)} />
        <ScaleBar xPx={2} yPx={4} factor={1 / plan.machine.scale} mostPx={BAR_MOST_PX} />
        <ScaleBar xPx={plan.nearBox.leftPx} yPx={4} factor={plan.nearFactor} mostPx={BAR_MOST_PX} />
      </svg>
      <p className="grind-view-line">{line}</p>
    </section>
  )
}

/** Laid out for the unworn edge, once: whatever moves is seen to move. */
const planOf = ({ job, setUp }: Running, widthPx: number, heightPx: number): Plan => {
  const { chordMm } = hollowOf(setUp.wheelRadiusMm, setUp.bevelRad, job.blade.thicknessMm)
  const still = { tiltRad: setUpTiltRad(setUp), yawRad: 0, traverseMm: 0 }
  const triangle = liveTriangle(setUp, machineFigures(job, setUp), still, 0, 0)
  const middle = triangle.onBlade((chordMm * Math.cos(setUp.bevelRad)) / 2, job.blade.thicknessMm / 2)
  return { ...sectionPlan(triangle, setUp, chordMm, middle, { widthPx, heightPx }), still: triangle }
}

const anglesAt = (frame: Frame, shape: RunShape, atMm: number) => {
  const now = sectionAt(shape, frame.vMm, atMm)
  const before = sectionAt(shape, shape.vStartMm, atMm)
  return { ...bevelAngles(now), setBackMm: (now.backMm[0] as number) - (before.backMm[0] as number) }
}

type Angles = ReturnType<typeof anglesAt> & { readonly tiltRad: number }

const wordsOf = ({ inWords }: Figures, { tipRad, chordRad, setBackMm, tiltRad }: Angles) => ({
  tip: inWords(degFromRad(tipRad), 'deg', 1),
  chord: inWords(degFromRad(chordRad), 'deg', 1),
  tilt: inWords(degFromRad(tiltRad), 'deg', 2),
  setBack: inWords(setBackMm, 'mm', 2),
})

const lengthsOf = ({ inWords }: Figures, { setUp }: Running): Lengths => ({
  axes: inWords(setUp.barDistanceMm, 'mm', 1),
  projection: inWords(setUp.projectionMm, 'mm', 1),
  radius: inWords(setUp.wheelRadiusMm, 'mm', 1),
})
