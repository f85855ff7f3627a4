import { fixed } from '../../../main/contract/figures.ts'
import { textScale } from '../../ui/textScale.ts'
import { useTexts } from '../../ui/texts.tsx'
import type { RunEvent } from '../../worker/runEvents.ts'
import { useForetold } from '../predict/predicting.ts'
import { type Moment, type Running, useTold } from '../useLiveGrind.ts'
import { AXIS_PX } from './RunCurve.tsx'
import { placeMarks, stripEvents } from './stripEvents.ts'
import './eventMarks.css'

const NO_EVENTS: readonly RunEvent[] = []

interface EventMarksProps {
  readonly running: Running
  readonly moment: Moment
  readonly wantedMm: number | null
  readonly widthPx: number
  readonly lastStep: number
  /** Where the words begin, from the strip's top. */
  readonly topPx: number
  readonly onStep: (step: number) => void
}

const DOT_PX = 4
/** Where a leader ends, from the upper end of its words (px). */
const LEADER_END_PX = 5
/** Size of the words (px at 16 px text). */
const TEXT_PX = 15
const ROW_PX = 24

/** What happened when: on the run a dot at its moment, filled where it is past, open where it is to come; below it its words, which lead there. */
export const EventMarks = ({ running, moment, wantedMm, widthPx, lastStep, topPx, onStep }: EventMarksProps) => {
  const t = useTexts()
  const { live, shape } = running
  const events = useTold(live, () => (shape.run === live.shape?.run ? live.events : NO_EVENTS))
  const { stepsPerSweep } = running.shape
  const { history } = running.live
  const scale = textScale()
  const rowPx = ROW_PX * scale
  const foretold = useForetold()
  const told = stripEvents(events, history, wantedMm, running.job).filter(({ step }) => foretold || step <= moment.step)
  const named = told.map((event) => ({
    ...event,
    text: t(`grind:event.${event.kind}`),
  }))
  const marks = placeMarks(named, (step) => (step / lastStep) * widthPx, widthPx, TEXT_PX * scale)
  return (
    <>
      <svg className="event-dots" width={widthPx} height={topPx + 2 * rowPx} aria-hidden="true">
        {marks.map(({ kind, step, xPx, textPx, row }) => (
          <g key={kind} data-dot={kind} data-past={step <= moment.step}>
            {textPx !== null && <path d={leaderPath(xPx, textPx, topPx + row * rowPx + LEADER_END_PX)} />}
            <circle cx={xPx} cy={AXIS_PX} r={DOT_PX} />
          </g>
        ))}
      </svg>
      <ul className="event-marks" aria-label={t('grind:event.list')}>
        {marks.map(({ kind, step, text, xPx, textPx, row }) => {
          const sweep = fixed(step / stepsPerSweep, 1)
          const name = t('grind:event.at', { event: text, sweep })
          return (
            <li key={kind} style={{ left: textPx ?? xPx, top: textPx === null ? AXIS_PX : topPx + row * rowPx }}>
              <button
                type="button"
                className="event-mark"
                data-event={kind}
                data-past={step <= moment.step}
                data-bare={textPx === null}
                aria-label={name}
                title={name}
                onClick={() => onStep(step)}
              >
                {textPx === null ? '' : text}
              </button>
            </li>
          )
        })}
      </ul>
    </>
  )
}

/** From its moment on the axis down to the beginning of its words. */
const leaderPath = (atPx: number, wordsPx: number, endPx: number): string =>
  `M${atPx.toFixed(1)} ${AXIS_PX}L${wordsPx.toFixed(1)} ${endPx}`
