import type { Frame } from '../../worker/protocol.ts'
import type { Running } from '../useLiveGrind.ts'
import { type Deviation, deviationOf } from './deviation.ts'

/** Where one grind stands, in figures. */
export type MomentFigures = Pick<
  Frame,
  'step' | 'sweep' | 'reliefLeftMm' | 'reliefRightMm' | 'inkLeftShare' | 'volumeRemovedMm3'
>

/** Two grinds at one moment. */
export interface Pair {
  readonly own: MomentFigures
  readonly other: MomentFigures
  readonly deviation: Deviation
  /** The other's run is over before this moment; it stands at its end. */
  readonly shorter: boolean
}

/** An edge of a moment put by, and how hard it presses. */
export interface PutBy {
  readonly edgeMm: Float64Array
  readonly pressureNPerMm: Float64Array
}

/** Two grinds kept at the same sweep. */
export interface Together {
  /** The last moment that both have shown; null before the first. */
  readonly pair: Pair | null
  /** Both edges of that moment, filled anew with every one: drawn from these, two lines never stand at two moments. */
  readonly own: PutBy
  readonly other: PutBy
  subscribe(listener: () => void): () => void
  end(): void
}

type Grind = Pick<Running, 'live' | 'shape'>

const figuresOf = (frame: Frame, { shape }: Grind): MomentFigures => ({
  step: frame.step,
  sweep: frame.step / shape.stepsPerSweep,
  reliefLeftMm: frame.reliefLeftMm,
  reliefRightMm: frame.reliefRightMm,
  inkLeftShare: frame.inkLeftShare,
  volumeRemovedMm3: frame.volumeRemovedMm3,
})

const newPutBy = ({ shape }: Grind): PutBy => ({
  edgeMm: new Float64Array(shape.acrossCount),
  pressureNPerMm: new Float64Array(shape.acrossCount),
})

const fillPutBy = ({ edgeMm, pressureNPerMm }: PutBy, frame: Frame, { shape }: Grind): void => {
  for (let i = 0; i < edgeMm.length; i++) edgeMm[i] = frame.vMm[i * shape.throughCount] as number
  pressureNPerMm.set(frame.pressureNPerMm)
}

/** The step of another run at which it has made as many sweeps. */
export const stepFor = (step: number, ownPerSweep: number, otherPerSweep: number): number =>
  Math.floor((step * otherPerSweep) / ownPerSweep)

/**
 * Keeps the other grind where the own one is. One moment is asked for at a time, with the own figures of that moment put by,
 * so that what is told together always belongs together, however long the other takes; then the newest is asked for.
 * @param fixedStep where the other is to stand instead, beyond its end: at its end; null: at the same sweep
 */
export const keepTogether = (own: Grind, other: Grind, fixedStep: number | null): Together => {
  const listeners = new Set<() => void>()
  const ownAsked = newPutBy(own)
  const [ownMet, otherMet] = [newPutBy(own), newPutBy(other)]
  let pair: Pair | null = null
  let ownThen: MomentFigures | null = null
  let askedStep: number | null = null
  let overtaken = false

  const frameOf = ({ live, shape }: Grind): Frame | null => (live.latest?.run === shape.run ? live.latest : null)
  const goalOf = (frame: Frame): number =>
    fixedStep ?? stepFor(frame.step, own.shape.stepsPerSweep, other.shape.stepsPerSweep)
  const putBy = (frame: Frame): void => {
    ownThen = figuresOf(frame, own)
    fillPutBy(ownAsked, frame, own)
  }
  const meet = (frame: Frame, goal: number): void => {
    ownMet.edgeMm.set(ownAsked.edgeMm)
    ownMet.pressureNPerMm.set(ownAsked.pressureNPerMm)
    fillPutBy(otherMet, frame, other)
    pair = {
      own: ownThen as MomentFigures,
      other: figuresOf(frame, other),
      deviation: deviationOf(
        { uMm: own.shape.uMm, vMm: ownMet.edgeMm, stride: 1 },
        { uMm: other.shape.uMm, vMm: otherMet.edgeMm, stride: 1 },
      ),
      shorter: fixedStep === null && goal > frame.step,
    }
    for (const listener of listeners) listener()
  }
  const ask = (): void => {
    const [ownNow, otherNow] = [frameOf(own), frameOf(other)]
    if (!ownNow || !otherNow) return
    putBy(ownNow)
    const goal = goalOf(ownNow)
    const step = Math.min(goal, otherNow.lastStep)
    if (otherNow.step === step) meet(otherNow, goal)
    else {
      askedStep = goal
      other.live.seek(step)
    }
  }
  const ownMoved = (): void => {
    if (askedStep === null) ask()
    else overtaken = true
  }
  const otherMoved = (): void => {
    const frame = frameOf(other)
    if (!frame || askedStep === null || frame.step !== Math.min(askedStep, frame.lastStep)) return
    const goal = askedStep
    askedStep = null
    meet(frame, goal)
    if (overtaken) ask()
    overtaken = false
  }
  const ends = [own.live.subscribe('frame', ownMoved), other.live.subscribe('frame', otherMoved)]
  ask()
  return {
    get pair() {
      return pair
    },
    own: ownMet,
    other: otherMet,
    subscribe: (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    end: () => {
      for (const end of ends) end()
    },
  }
}
