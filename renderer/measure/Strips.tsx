import type { Tool } from '../../main/contract/entities.ts'
import { useTexts } from '../ui/texts.tsx'

const WIDTH_PX = 300
const HALF_PX = 118
const STRIP_PX = 26
const SURFACE_PX = 84
const FLOOR_PX = 136
const OUT_SHARE = 0.8
const PLACES = [-OUT_SHARE, 0, OUT_SHARE] as const

/** Where the strip goes under the iron: left, middle, right, seen from behind the plane. */
export const Strips = ({ tool }: { readonly tool: Tool }) => {
  const t = useTexts()
  const middlePx = WIDTH_PX / 2
  const turnedOver = tool.bevelSide === 'up'
  const dotLeft = turnedOver === (tool.dotCorner === 'right')
  const edge = `M${middlePx - HALF_PX} 46Q${middlePx} ${SURFACE_PX + 24} ${middlePx + HALF_PX} 46`
  return (
    <section className="lie" aria-label={t('measure:strips.heading')}>
      <figure className="lie-sketch" data-good>
        <svg
          className="drawing"
          viewBox={`0 0 ${WIDTH_PX} ${FLOOR_PX}`}
          role="img"
          aria-label={t('measure:strips.label')}
        >
          {PLACES.map((place) => (
            <rect
              key={place}
              className="wood"
              x={middlePx + place * HALF_PX - STRIP_PX / 2}
              y={SURFACE_PX - 24 - 20 * (1 - Math.abs(place))}
              width={STRIP_PX}
              height={FLOOR_PX - SURFACE_PX + 24}
            />
          ))}
          <path className="steel" d={`${edge}V10H${middlePx - HALF_PX}Z`} />
          <path className="lie-edge" d={edge} />
          <circle className="dot" cx={middlePx + (dotLeft ? -1 : 1) * (HALF_PX - 14)} cy="24" r="5" />
        </svg>
        <figcaption>{t('measure:strips.how')}</figcaption>
      </figure>
      <p className="muted lie-note">{t(`measure:strips.dot.${tool.bevelSide}`)}</p>
    </section>
  )
}
