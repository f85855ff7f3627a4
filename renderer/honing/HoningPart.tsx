import './honingTexts.ts'
import { anglesInUse, LEAST_CLEARANCE_DEG } from '../../geometry/plane.ts'
import type { Report } from '../../geometry/report.ts'
import type { Tool } from '../../main/contract/entities.ts'
import { NoJob } from '../app/NoJob.tsx'
import { ProblemNote } from '../app/ProblemNote.tsx'
import { useApp } from '../app/store.ts'
import { useReadings } from '../measure/useReadings.ts'
import { FigureField } from '../ui/FigureField.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { knownEdges } from '../wood/edges.ts'
import { BevelSection } from './BevelSection.tsx'
import { honedBevel } from './bevel.ts'
import { Heat } from './Heat.tsx'
import './honing.css'
import { StrokesPanel } from './StrokesPanel.tsx'
import { changeHoning, useHoning } from './setting.ts'

/** Hone: the secondary bevel, strokes that keep the curve, and what heat does. */
export const HoningPart = () => {
  const t = useTexts()
  const tool = useApp((app) => app.tool)
  const report = useApp((app) => app.report)
  if (!tool) return <NoJob />
  return (
    <div className="honing">
      <div className="plan-note">
        <ProblemNote />
      </div>
      {report ? <Honing tool={tool} report={report} /> : <p className="page-note">{t('plan:working')}</p>}
    </div>
  )
}

interface HoningProps {
  readonly tool: Tool
  readonly report: Report
}

/** Honed above a hollow's chord by this and more where a tool says nothing (degrees; common practice). */
const ABOVE_DEG = 5

const Honing = ({ tool, report }: HoningProps) => {
  const readings = useReadings(tool.id)
  const setting = useHoning(tool.id)
  const honedDeg = setting.honedDeg ?? tool.honedBevelDeg ?? Math.round(report.setUp.bevelAngleDeg + ABOVE_DEG)
  const edges = knownEdges(report, readings ?? [])
  return (
    <>
      <Secondary tool={tool} report={report} honedDeg={honedDeg} />
      <StrokesPanel tool={tool} report={report} edges={edges} />
      <Heat tool={tool} report={report} />
    </>
  )
}

const Secondary = ({ tool, report, honedDeg }: HoningProps & { readonly honedDeg: number }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { setBackMm } = useHoning(tool.id)
  const honed = honedBevel(report, honedDeg, setBackMm)
  const { seatAngleDeg, bevelSide, backBevelDeg } = tool
  const inUse = seatAngleDeg === null ? null : anglesInUse({ seatAngleDeg, bevelSide, honedDeg, backBevelDeg })
  return (
    <section className="honing-bevel" aria-label={t('honing:bevel.heading')}>
      <div>
        <h2>{t('honing:bevel.heading')}</h2>
        <div className="honing-fields">
          <FigureField
            quantity="blade.honedBevelDeg"
            size="large"
            value={honedDeg}
            onCommit={(value) => changeHoning(tool.id, { honedDeg: value })}
          />
          <FigureField
            quantity="honing.setBackMm"
            size="large"
            value={setBackMm}
            onCommit={(value) => value !== null && changeHoning(tool.id, { setBackMm: value })}
          />
        </div>
        <p className="sentence" role="status">
          {t(`honing:bevel.${honed.kind}`, {
            chord: inWords(report.hollow.chordAngleDeg, 'deg', 1),
            width: honed.kind === 'onHeel' ? '' : inWords(honed.widthMm, 'mm', 2),
            count: honed.kind === 'flat' ? honed.honings : 0,
          })}
        </p>
        <p>{t('honing:bevel.even')}</p>
        <p>{t('honing:bevel.burr')}</p>
        {inUse && (
          <p className="muted">
            {t('honing:bevel.angles', {
              pitch: inWords(inUse.pitchDeg, 'deg', 1),
              clearance: inWords(inUse.clearanceDeg, 'deg', 1),
            })}
          </p>
        )}
        {inUse && inUse.clearanceDeg < LEAST_CLEARANCE_DEG && (
          <p className="caution">{t('plan:angles.little', { least: inWords(LEAST_CLEARANCE_DEG, 'deg', 1) })}</p>
        )}
      </div>
      <BevelSection hollowed={report} honedDeg={honedDeg} setBackMm={setBackMm} />
    </section>
  )
}
