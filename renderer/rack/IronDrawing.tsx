import { radFromDeg } from '../../geometry/units.ts'
import type { Tool } from '../../main/contract/entities.ts'
import { useTexts } from '../ui/texts.tsx'

/** CSS pixels in a millimetre: 96 pixels an inch. */
const PX_PER_MM = 96 / 25.4
/** Length of the drawn end of an iron, broken off above (mm). */
const DRAWN_MM = 120
/** Scales in which it may be drawn, largest first; the first that fits is taken. */
const SCALES = [1, 2] as const
/** Width that the column has for the drawing (px). */
const ROOM_PX = 130

/** The end of the iron, back up and edge down as at the wheel, in full or half size, with its dot. */
export const IronDrawing = ({ tool }: { readonly tool: Tool }) => {
  const t = useTexts()
  const { widthMm, thicknessMm, bevelAngleDeg, dotCorner, reliefMm } = tool
  const scale = SCALES.find((each) => (widthMm * PX_PER_MM) / each <= ROOM_PX) ?? SCALES[1]
  const [margin, half] = [4, widthMm / 2]
  const lengthMm = DRAWN_MM * (scale === 1 ? 0.5 : 1)
  const bevelMm = thicknessMm / Math.tan(radFromDeg(bevelAngleDeg))
  const dotX = (dotCorner === 'left' ? -1 : 1) * (half - Math.min(5, half / 2))
  const edge = `M${-half} ${-reliefMm}Q0 ${reliefMm} ${half} ${-reliefMm}`
  const size = { width: widthMm + 2 * margin, height: lengthMm + margin }
  return (
    <figure className="iron-drawing">
      <svg
        viewBox={`${-half - margin} ${-lengthMm} ${size.width} ${size.height}`}
        width={(size.width * PX_PER_MM) / scale}
        height={(size.height * PX_PER_MM) / scale}
        role="img"
        aria-label={t('rack:drawing.label', { side: t(`common:side.${dotCorner}`) })}
      >
        <path className="iron-body" d={`${edge}V${-lengthMm}H${-half}Z`} />
        <path className="iron-hidden" d={`M${-half} ${-bevelMm}H${half}`} />
        <path className="iron-edge" d={edge} />
        <circle className="iron-dot" cx={dotX} cy={-bevelMm - 8} r={Math.min(2.2, half / 3)} />
      </svg>
      <figcaption className="muted">
        {t(`rack:drawing.dot.${dotCorner}`)}
        <br />
        {t('rack:drawing.scale', { scale: `1 : ${scale}` })}
      </figcaption>
    </figure>
  )
}
