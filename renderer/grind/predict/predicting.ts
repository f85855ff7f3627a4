import { create } from 'zustand'
import type { LiveGrind } from '../../worker/liveGrind.ts'
import type { Guess } from './verdict.ts'

/** What is being guessed, and how far that is. */
export interface Predicting {
  /** Nothing is asked; the fields are open and the program's own prediction hidden; the wheel runs; the answer is there. */
  readonly stage: 'idle' | 'asking' | 'running' | 'told'
  readonly guess: Guess | null
  /** The run that the answer belongs to. */
  readonly run: number | null
}

export const usePredicting = create<Predicting>()(() => ({ stage: 'idle', guess: null, run: null }))

/** Whether what the program foretells may be seen: not while a guess is open. */
export const useForetold = (): boolean => usePredicting(({ stage }) => stage !== 'asking' && stage !== 'running')

/** Opens the fields: what the program foretells is out of sight until the wheel has answered. */
export const ask = (): void => usePredicting.setState({ stage: 'asking', run: null })

/** Puts the guess away and shows what the program foretells again. */
export const putAway = (): void => usePredicting.setState({ stage: 'idle', guess: null, run: null })

/** How fast the answer is played (sweeps a second): the whole of an ordinary grind in some ten seconds. */
const ANSWER_SWEEPS_PER_SECOND = 16

/**
 * Grinds from the start to the guess's sweep and stops there.
 * @param atOnce for those who want as little motion as can be
 * @returns a function that gives up listening
 */
export const runGuess = (live: LiveGrind, guess: Guess, stepsPerSweep: number, atOnce: boolean): (() => void) => {
  const run = live.shape?.run ?? null
  const target = guess.sweep * stepsPerSweep
  usePredicting.setState({ stage: 'running', guess, run })
  const end = live.subscribe('frame', () => {
    const frame = live.latest
    if (usePredicting.getState().stage !== 'running') return end()
    if (frame?.run !== run) {
      end()
      // The job has begun anew: the guess is asked for again.
      usePredicting.setState({ stage: 'asking', run: null })
      return
    }
    if (frame.step === target && !frame.playing) {
      end()
      usePredicting.setState({ stage: 'told' })
    } else if (frame.step >= target) live.seek(target)
  })
  live.seek(atOnce ? target : 0)
  if (!atOnce) live.play(ANSWER_SWEEPS_PER_SECOND)
  return end
}
