import { useRef } from 'react'
import { plainly } from '../../main/contract/figures.ts'
import { useApp } from '../app/store.ts'
import { ScaleBar } from '../ui/ScaleBar.tsx'
import { textScale } from '../ui/textScale.ts'
import { useTexts } from '../ui/texts.tsx'
import { useBox } from '../ui/useBox.ts'
import { useFigures } from '../ui/useFigure.ts'
import { FiguresBeside } from './FiguresBeside.tsx'
import { extentOf, layoutOf } from './layout.ts'
import { Measures } from './Measures.tsx'
import { BEYOND_BAR_MM } from './outlines.ts'
import { Parts } from './Parts.tsx'
import type { Standing } from './SetUpScreen.tsx'
import { triangleOf } from './triangle.ts'
import { Ways } from './Ways.tsx'

const BEFORE = { widthPx: 1216, heightPx: 560 }

/** Wheel, bar and blade to one scale, each figure beside the part it belongs to. */
export const TriangleDrawing = ({ standing }: { readonly standing: Standing }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const box = useRef<HTMLDivElement>(null)
  const size = useBox(box, BEFORE)
  const inFront = useApp((app) => app.station?.barPlace === 'inFront')
  const { setUp, job, figures } = standing
  const triangle = triangleOf(setUp, job.station.barOffsetMm)
  const extent = extentOf(triangle, setUp.wheelRadiusMm, setUp.projectionMm + BEYOND_BAR_MM)
  const large = textScale()
  const layout = layoutOf(extent, size, large)
  const label = t('setUp:drawing.label', {
    wheel: inWords(job.station.wheelDiameterMm, 'mm', 1),
    gap: inWords(figures.gapMm, 'mm', 1),
    projection: inWords(figures.projectionMm, 'mm', 1),
    bevel: inWords(figures.bevelAngleDeg, 'deg', 1),
  })
  const shared = { standing, triangle, layout }
  return (
    <div className="triangle" data-wide={layout.wide}>
      <div className="triangle-paper" ref={box}>
        <svg className="drawing" width={size.widthPx} height={size.heightPx} role="img" aria-label={label}>
          <Parts {...shared} />
          <Measures {...shared} />
          {inFront && <Ways xPx={size.widthPx - 316} yPx={16} />}
          <g transform={`translate(${size.widthPx - 216 * large} 16)`}>
            <text x="0" y={12 * large}>
              {t('setUp:drawing.scale', { scale: `1 : ${plainly(layout.scale)}` })}
            </text>
            <ScaleBar xPx={0} yPx={20 * large} factor={1 / layout.scale} mostPx={130} />
          </g>
        </svg>
      </div>
      <FiguresBeside {...shared} widthPx={size.widthPx} />
    </div>
  )
}
