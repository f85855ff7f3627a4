import type { TFunction } from 'i18next'
import type { ReactNode } from 'react'
import type { Side } from '../../geometry/report.ts'
import { setUpReport } from '../../geometry/setUp.ts'
import { degFromRad } from '../../geometry/units.ts'
import type { Stops } from '../scene/machine.ts'
import type { Rotation } from '../scene/wheel.ts'
import { FigureText } from '../ui/FigureText.tsx'
import type { Figures } from '../ui/useFigure.ts'
import { BarField, ProjectionField } from './handles/fields.tsx'
import type { LabelSpec } from './placeLabels.ts'
import { TurnsField } from './TurnsField.tsx'
import type { Moment, Running } from './useLiveGrind.ts'

/** Everything the labels tell. */
export interface LabelFacts {
  readonly t: TFunction
  readonly figures: Figures
  readonly running: Running
  readonly moment: Moment
  readonly stops: Stops
  readonly rotation: Rotation
  readonly dot: Side
  readonly lifted: boolean
  /** Whether what is set can be typed into its label. */
  readonly typed: boolean
}

/** Yaw smaller than this reads as square (degrees). */
const SQUARE_DEG = 0.005

const stopLabel = ({ t, figures, stops, moment, lifted, typed }: LabelFacts, side: Side): LabelSpec => {
  const left = side === 'left'
  const turns = left ? stops.leftTurns : stops.rightTurns
  const bears = !lifted && moment.bearing === side
  return {
    id: `stop-${side}`,
    side,
    anchors: [left ? 'stopLeft' : 'stopRight'],
    rank: 1,
    content: (
      <>
        <FigureText
          figure={figures.plain(left ? stops.leftMm : stops.rightMm, 'mm', 2)}
          name={t(left ? 'grind:label.stopLeft' : 'grind:label.stopRight')}
          note={bears ? t('grind:label.bears') : undefined}
        />
        {typed ? <TurnsField side={side} turns={turns} /> : <span>{figures.inWords(turns, 'turn', 2)}</span>}
      </>
    ),
  }
}

const label = (
  id: string,
  side: LabelSpec['side'],
  anchors: LabelSpec['anchors'],
  rank: LabelSpec['rank'],
  content: ReactNode,
): LabelSpec => ({ id, side, anchors, rank, content })

const yawLabel = ({ t, figures, moment }: LabelFacts): LabelSpec => {
  const yawDeg = degFromRad(moment.yawRad)
  const name = Math.abs(yawDeg) < SQUARE_DEG ? 'yawNone' : yawDeg < 0 ? 'yawLeft' : 'yawRight'
  const text = <FigureText figure={figures.plain(Math.abs(yawDeg), 'deg', 2)} name={t(`grind:label.${name}`)} />
  return label('yaw', 'right', ['pivot'], 2, text)
}

const wheelLabel = ({ t, figures, running, rotation }: LabelFacts): LabelSpec => {
  const { wheelDiameterMm, wheelSpeedRpm } = running.job.station
  const speed = figures.inWords(wheelSpeedRpm, 'rpm', 0)
  const note = t(rotation === 'intoEdge' ? 'grind:label.wheelSpeed' : 'grind:label.wheelSpeedAway', { speed })
  const text = <FigureText figure={figures.plain(wheelDiameterMm, 'mm', 1)} name={t('grind:label.wheel')} note={note} />
  return label('wheel', 'left', ['wheelSide'], 3, text)
}

/** What the lifted blade shows: the ink, and which corner carries the dot that now faces away. */
const liftedLabels = ({ t, moment, dot }: LabelFacts): LabelSpec[] => {
  const share = { text: String(Math.round(100 * moment.inkLeftShare)), unit: '%' }
  return [
    label('ink', 'left', ['ink'], 1, <FigureText figure={share} name={t('grind:label.ink')} />),
    label(
      'dot',
      dot,
      ['dotCorner'],
      2,
      <span>{t(dot === 'left' ? 'grind:label.dotLeft' : 'grind:label.dotRight')}</span>,
    ),
  ]
}

/** The labels of the machine, each beside its part. */
export const stageLabels = (facts: LabelFacts): LabelSpec[] => {
  const { t, figures, running, lifted, typed } = facts
  const { setUp, job } = running
  const steered = job.fixture.kind === 'steered' && job.fixture.guideArmMm !== null
  const bevel = (
    <FigureText figure={figures.plain(degFromRad(setUp.bevelRad), 'deg', 1)} name={t('grind:label.bevel')} />
  )
  const { gapMm, projectionMm } = setUpReport(job, setUp)
  const gap = typed ? (
    <BarField job={job} setUp={setUp} />
  ) : (
    <FigureText figure={figures.plain(gapMm, 'mm', 1)} name={t('grind:label.gap')} />
  )
  const projection = typed ? (
    <ProjectionField job={job} setUp={setUp} />
  ) : (
    <FigureText figure={figures.plain(projectionMm, 'mm', 1)} name={t('grind:label.projection')} />
  )
  const load = <FigureText figure={figures.plain(job.motion.loadN, 'N', 0)} name={t('grind:label.load')} />
  return [
    ...(steered ? [stopLabel(facts, 'left'), stopLabel(facts, 'right')] : []),
    ...(steered && !lifted ? [yawLabel(facts)] : []),
    ...(lifted ? liftedLabels(facts) : [label('gap', 'left', ['barUnder', 'wheelTop'], 2, gap)]),
    label('projection', 'left', ['projectionTop', 'projectionEdge'], 2, projection),
    wheelLabel(facts),
    label('bevel', 'right', ['bevel'], 2, bevel),
    ...(lifted ? [] : [label('load', 'right', ['loadTail'], 3, load)]),
  ]
}
