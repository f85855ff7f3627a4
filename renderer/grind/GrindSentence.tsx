import { useEffect, useRef, useState } from 'react'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { momentSentence } from './sentence.ts'
import type { Moment, Running } from './useLiveGrind.ts'

/** The sentence as read aloud is not renewed faster than this while the grind plays (ms). */
const SENTENCE_MS = 3000

interface SentenceProps {
  readonly running: Running
  readonly moment: Moment
  readonly lifted: boolean
  readonly wantedMm: number | null
  readonly foretoldMm: number | null
}

/** One sentence that says what the picture says. */
export const Sentence = ({ running, moment, lifted, wantedMm, foretoldMm }: SentenceProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const saidMs = useRef(0)
  const [said, setSaid] = useState('')
  const now = momentSentence(t, moment, {
    stepsPerSweep: running.shape.stepsPerSweep,
    wantedMm,
    foretoldMm,
    lifted,
    inWords: (mm) => inWords(mm, 'mm', 2),
  })
  useEffect(() => {
    const clockMs = performance.now()
    if (moment.playing && clockMs - saidMs.current < SENTENCE_MS) return
    saidMs.current = clockMs
    setSaid(now)
  }, [now, moment.playing])
  return (
    <div className="grind-sentence">
      <p aria-hidden="true">{now}</p>
      <p className="unseen" aria-live="polite">
        {said}
      </p>
    </div>
  )
}
