import { anglesInUse, LEAST_CLEARANCE_DEG } from '../../geometry/plane.ts'
import type { Report } from '../../geometry/report.ts'
import type { Tool } from '../../main/contract/entities.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'

/** Pitch and clearance as the iron is honed, and the two angles of a hollow bevel. */
export const Angles = ({ tool, report }: { readonly tool: Tool; readonly report: Report }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { seatAngleDeg, bevelSide, backBevelDeg, honedBevelDeg } = tool
  const { bevelAngleDeg } = report.setUp
  const deg = (value: number) => inWords(value, 'deg', 1)
  const honedDeg = honedBevelDeg ?? bevelAngleDeg
  const inUse = seatAngleDeg === null ? null : anglesInUse({ seatAngleDeg, bevelSide, honedDeg, backBevelDeg })
  return (
    <section aria-label={t('plan:angles.name')}>
      <h2>{t('plan:angles.name')}</h2>
      {inUse && (
        <p>
          {t('plan:angles.inUse', {
            pitch: deg(inUse.pitchDeg),
            clearance: deg(inUse.clearanceDeg),
            honed: deg(honedDeg),
          })}{' '}
          {backBevelDeg > 0 && t(`plan:angles.back.${bevelSide}`, { back: deg(backBevelDeg) })}
        </p>
      )}
      {inUse && inUse.clearanceDeg < LEAST_CLEARANCE_DEG && (
        <p className="caution">{t('plan:angles.little', { least: deg(LEAST_CLEARANCE_DEG) })}</p>
      )}
      <p className="muted">
        {t('plan:angles.hollow', { tip: deg(bevelAngleDeg), chord: deg(report.hollow.chordAngleDeg) })}
      </p>
    </section>
  )
}
