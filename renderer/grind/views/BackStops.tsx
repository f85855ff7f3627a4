import { useMemo, useRef } from 'react'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import { setSpan } from '../pointRow.ts'
import { stopsOf } from '../stops.ts'
import { type Moment, useEachFrame } from '../useLiveGrind.ts'
import { freeWayMm } from './backPlan.ts'
import type { ViewProps } from './room.ts'

/** Height of the guide between its stops, drawn over the blade (px). */
export const GUIDE_PX = 36
/** Half the width of the guide, and the length of a screw as drawn (mm): plain schematic parts. */
const GUIDE_MM = 9
const SCREW_MM = 12
/** Half of the longest word under a screw, and the room that the guide's name takes (px). */
const WORDS_HALF_PX = 44
const GUIDE_NAME_PX = 120

interface StopsProps {
  readonly running: ViewProps['running']
  readonly moment: Moment
  readonly lifted: boolean
  readonly pxPerMm: number
  readonly plotPx: number
  /** Where there is room, everything carries its name. */
  readonly named: boolean
}

/** The guide at the upper end of the fixture between its two screws, to the blade's scale: the free way left is seen. */
export const BackStops = ({ running, moment, lifted, pxPerMm, plotPx, named }: StopsProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { job, setUp } = running
  const stops = useMemo(() => stopsOf(job, setUp), [job, setUp])
  const left = useRef<SVGRectElement>(null)
  const right = useRef<SVGRectElement>(null)
  const middlePx = plotPx / 2 + job.fixture.pivotOffsetMm * pxPerMm
  const screwPx = SCREW_MM * pxPerMm
  const leftFreeMm = (yawRad: number) => freeWayMm(stops.leftMm, -1, job.fixture.guideArmMm ?? 0, yawRad)
  const rightFreeMm = (yawRad: number) => freeWayMm(stops.rightMm, 1, job.fixture.guideArmMm ?? 0, yawRad)
  useEachFrame(running, (frame) => {
    const leftPx = (GUIDE_MM + leftFreeMm(frame.yawRad)) * pxPerMm
    const rightPx = (GUIDE_MM + rightFreeMm(frame.yawRad)) * pxPerMm
    setSpan(left.current, middlePx - leftPx - screwPx, screwPx)
    setSpan(right.current, middlePx + rightPx, screwPx)
  })
  const bears = (side: 'left' | 'right') => !lifted && moment.bearing === side
  const free = (side: 'left' | 'right', mm: number) =>
    bears(side) ? t('views:backPlan.bears') : t('views:backPlan.free', { play: inWords(mm, 'mm', 2) })
  const besidePx = GUIDE_MM * pxPerMm + screwPx / 2
  // On a narrow blade the screws stand out beyond the plot; their words stay within it.
  const wordsAtPx = (px: number) => Math.min(Math.max(px, WORDS_HALF_PX), plotPx - WORDS_HALF_PX)
  return (
    <g>
      <rect
        className="back-guide"
        x={middlePx - GUIDE_MM * pxPerMm}
        width={2 * GUIDE_MM * pxPerMm}
        y={2}
        height={GUIDE_PX - 4}
      />
      <rect ref={left} className="back-screw" data-bears={bears('left')} y={12} height={GUIDE_PX - 24} />
      <rect ref={right} className="back-screw" data-bears={bears('right')} y={12} height={GUIDE_PX - 24} />
      {named ? (
        <>
          {2 * GUIDE_MM * pxPerMm >= GUIDE_NAME_PX && (
            <text className="back-guide-name" x={middlePx} y={GUIDE_PX / 2 + 5} textAnchor="middle">
              {t('views:backPlan.guide')}
            </text>
          )}
          <text x={wordsAtPx(middlePx - besidePx)} y={GUIDE_PX + 8} textAnchor="middle">
            {free('left', leftFreeMm(moment.yawRad))}
          </text>
          <text x={wordsAtPx(middlePx + besidePx)} y={GUIDE_PX + 8} textAnchor="middle">
            {free('right', rightFreeMm(moment.yawRad))}
          </text>
        </>
      ) : (
        <>
          {bears('left') && (
            <text x={0} y={GUIDE_PX - 12}>
              {t('views:backPlan.bears')}
            </text>
          )}
          {bears('right') && (
            <text x={plotPx} y={GUIDE_PX - 12} textAnchor="end">
              {t('views:backPlan.bears')}
            </text>
          )}
        </>
      )}
    </g>
  )
}
