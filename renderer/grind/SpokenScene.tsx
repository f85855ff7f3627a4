import { useEffect, useId, useMemo, useRef, useState } from 'react'
import { inkLeftByThird } from '../../geometry/ink.ts'
import type { Rotation } from '../scene/wheel.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import type { Frame } from '../worker/protocol.ts'
import { type SpokenLine, spokenLines } from './spoken.ts'
import { stopsOf } from './stops.ts'
import { touchingColumns } from './touching.ts'
import type { Moment, Running } from './useLiveGrind.ts'

/** While the grind plays the words are renewed this often (ms), for whoever reads along; nobody is interrupted. */
const RENEW_MS = 3000

interface SpokenSceneProps {
  readonly running: Running
  readonly moment: Moment
  readonly lifted: boolean
  readonly wantedMm: number | null
  readonly rotation: Rotation
  readonly dot: 'left' | 'right'
}

/** What of a frame's arrays is told: they are the worker's again when the words are read. */
const seenIn = (frame: Frame, { shape }: Running) => {
  const touching = touchingColumns(frame.pressureNPerMm)
  const at = (i: number): number => shape.uMm[i] as number
  return {
    touchingUMm: touching && ([at(touching[0]), at(touching[1])] as const),
    inkByThird: inkLeftByThird({ ...shape, vMm: frame.vMm }),
  }
}

/** What the model shows, as a list of sentences for those who do not see it: read at will, and told once it pauses. */
export const SpokenScene = (props: SpokenSceneProps) => {
  const { moment } = props
  const t = useTexts()
  const id = useId()
  const lines = useSpokenLines(props)
  return (
    <section className="unseen" aria-labelledby={id}>
      <h2 id={id}>{t('spoken:heading')}</h2>
      <ul aria-live={moment.playing ? 'off' : 'polite'}>
        {lines.map(({ name, text }) => (
          <li key={name}>{text}</li>
        ))}
      </ul>
    </section>
  )
}

const useSpokenLines = ({ running, moment, ...rest }: SpokenSceneProps): readonly SpokenLine[] => {
  const t = useTexts()
  const figures = useFigures()
  const toldMs = useRef(0)
  const [lines, setLines] = useState<readonly SpokenLine[]>([])
  const { lifted, wantedMm, rotation, dot } = rest
  const stops = useMemo(() => stopsOf(running.job, running.setUp), [running])
  useEffect(() => {
    const frame = running.live.latest
    const nowMs = performance.now()
    if (frame?.run !== running.shape.run || (moment.playing && nowMs - toldMs.current < RENEW_MS)) return
    toldMs.current = nowMs
    const facts = { running, moment, stops, lifted, wantedMm, rotation, dot, ...seenIn(frame, running) }
    setLines(spokenLines(t, figures, facts))
  }, [t, figures, running, moment, stops, lifted, wantedMm, rotation, dot])
  return lines
}
