import { type PointerEvent, useState } from 'react'
import { drawnShares } from '../../../geometry/lesson/drawn.ts'
import type { Ask } from '../../../geometry/lesson/lesson.ts'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import { DrawnEdge, drawnScale, HEIGHT_PX, WIDTH_PX } from '../pictures/DrawnEdge.tsx'
import type { AnsweringProps } from './Asked.tsx'

/** As far as anything is drawn (mm), and how fine. */
const MOST_MM = 1.5
const STEP_MM = 0.01

/** Places of the drawing by name, left corner first. */
const places = ['left', 'halfwayLeft', 'middle', 'halfwayRight', 'right'] as const

const FLAT: readonly number[] = drawnShares.map(() => 0)

/** The edge drawn as it is expected: by hand in the glass, or place by place. */
export const Draw = ({ findings, onAnswer }: AnsweringProps<Extract<Ask, { kind: 'draw' }>>) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const [behindMm, setBehindMm] = useState(FLAT)
  const set = (k: number, mm: number) => {
    const within = Math.min(MOST_MM, Math.max(0, Math.round(mm / STEP_MM) * STEP_MM))
    setBehindMm((now) => now.with(k, Number(within.toFixed(2))))
  }
  const draw = (event: PointerEvent<SVGSVGElement>) => {
    if (event.buttons === 0) return
    const box = event.currentTarget.getBoundingClientRect()
    const { xPx, mmAt } = drawnScale(MOST_MM)
    const atPx = ((event.clientX - box.left) / box.width) * WIDTH_PX
    const apart = drawnShares.map((share) => Math.abs(xPx(share) - atPx))
    const k = apart.indexOf(Math.min(...apart))
    set(k, mmAt(((event.clientY - box.top) / box.height) * HEIGHT_PX))
  }
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault()
        onAnswer({ kind: 'draw', behindMm })
      }}
    >
      <DrawnEdge
        drawnMm={behindMm}
        cameMm={null}
        mostMm={MOST_MM}
        label={t('teach:draw.label')}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId)
          draw(event)
        }}
        onPointerMove={draw}
      />
      <p className="teach-key">{t('teach:draw.key')}</p>
      <div className="teach-places">
        {places.map((place, k) => (
          <label key={place}>
            {t(`teach:draw.${place}`)}
            <input
              type="range"
              min={0}
              max={MOST_MM}
              step={STEP_MM}
              value={behindMm[k]}
              aria-valuetext={inWords(behindMm[k] as number, 'mm', 2)}
              onChange={(event) => set(k, Number(event.target.value))}
            />
            <span aria-hidden="true">{inWords(behindMm[k] as number, 'mm', 2)}</span>
          </label>
        ))}
      </div>
      <button type="submit" className="key key-main" disabled={findings === null}>
        {t('teach:answer')}
      </button>
    </form>
  )
}
