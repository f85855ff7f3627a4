import { Worker } from 'node:worker_threads'
import type { Job } from '../geometry/job.ts'
import type { Report } from '../geometry/report.ts'
import { failed, problem, type Result } from '../geometry/result.ts'
import type { MadeCards, MadeFile, makeCard, makeCards } from './cards/makeCard.ts'
import { type Language, language } from './contract/language.ts'
import type { makeLabels } from './labels/makeLabels.ts'
import type { makeWorksheet } from './lessons/makeWorksheet.ts'
import type { makeTemplate } from './template/makeTemplate.ts'
import { threadPath } from './threadPath.ts'
import type { makeDaySheet } from './work/makeDaySheet.ts'

/** What the maker can be given to do. */
type MakerTask =
  | { readonly does: 'solve'; readonly job: Job }
  | { readonly does: 'card'; readonly given: Parameters<typeof makeCard> }
  | { readonly does: 'cards'; readonly given: Parameters<typeof makeCards> }
  | { readonly does: 'daySheet'; readonly given: Parameters<typeof makeDaySheet> }
  | { readonly does: 'template'; readonly given: Parameters<typeof makeTemplate> }
  | { readonly does: 'worksheet'; readonly given: Parameters<typeof makeWorksheet> }
  | { readonly does: 'labels'; readonly given: Parameters<typeof makeLabels> }

/** A task as it is sent: papers are written in the language of whoever asks. */
export type SentTask = MakerTask & { readonly language: Language }

/** Long work, done elsewhere one task after the other. A task that is lost or stopped is a problem, never a rejection. */
export interface Maker {
  solveJob(job: Job): Promise<Result<Report>>
  /** @param signal ends the work itself, not just the waiting */
  makeCard(given: Parameters<typeof makeCard>, signal: AbortSignal): Promise<Result<MadeFile>>
  /** @param signal as above */
  makeCards(given: Parameters<typeof makeCards>, signal: AbortSignal): Promise<Result<MadeCards>>
  /** @param signal as above */
  makeDaySheet(given: Parameters<typeof makeDaySheet>, signal: AbortSignal): Promise<Result<MadeFile>>
  /** @param signal as above */
  makeTemplate(given: Parameters<typeof makeTemplate>, signal: AbortSignal): Promise<Result<MadeFile>>
  /** @param signal as above */
  makeLabels(given: Parameters<typeof makeLabels>, signal: AbortSignal): Promise<Result<MadeFile>>
  /** @param signal as above */
  makeWorksheet(given: Parameters<typeof makeWorksheet>, signal: AbortSignal): Promise<Result<MadeFile>>
  close(): Promise<void>
}

const lost = failed(problem('serviceFailed'))

/** A running thread, of which one thing is asked at a time. */
interface Hand {
  /** @returns what the thread answers, or the problem of a thread that ended first */
  ask(task: MakerTask): Promise<unknown>
  end(): Promise<unknown>
}

const startHand = (onEnd: () => void): Hand => {
  const thread = new Worker(threadPath('maker'), { execArgv: [] })
  let settle: (result: unknown) => void = () => undefined
  thread.on('message', (result) => settle(result))
  // Its end follows, and is what is answered.
  thread.on('error', (error) => void process.stderr.write(`${error instanceof Error ? error.stack : String(error)}\n`))
  thread.once('exit', () => {
    onEnd()
    settle(lost)
  })
  return {
    ask: (task) =>
      new Promise((resolve) => {
        settle = resolve
        thread.postMessage({ ...task, language: language() })
      }),
    end: () => thread.terminate(),
  }
}

/** Starts its thread at the first task, and anew where one was stopped or lost. */
export const createMaker = (): Maker => {
  let hand: Hand | null = null
  let last: Promise<unknown> = Promise.resolve()

  const run = async (task: MakerTask, signal?: AbortSignal): Promise<unknown> => {
    if (signal?.aborted) return lost
    const own = hand ?? startHand(() => (hand = null))
    hand = own
    const stop = (): void => void own.end()
    signal?.addEventListener('abort', stop)
    const result = await own.ask(task)
    signal?.removeEventListener('abort', stop)
    return result
  }
  const inTurn = (task: MakerTask, signal?: AbortSignal): Promise<unknown> => {
    last = last.then(() => run(task, signal))
    return last
  }
  return {
    solveJob: (job) => inTurn({ does: 'solve', job }) as Promise<Result<Report>>,
    makeCard: (given, signal) => inTurn({ does: 'card', given }, signal) as Promise<Result<MadeFile>>,
    makeCards: (given, signal) => inTurn({ does: 'cards', given }, signal) as Promise<Result<MadeCards>>,
    makeDaySheet: (given, signal) => inTurn({ does: 'daySheet', given }, signal) as Promise<Result<MadeFile>>,
    makeTemplate: (given, signal) => inTurn({ does: 'template', given }, signal) as Promise<Result<MadeFile>>,
    makeLabels: (given, signal) => inTurn({ does: 'labels', given }, signal) as Promise<Result<MadeFile>>,
    makeWorksheet: (given, signal) => inTurn({ does: 'worksheet', given }, signal) as Promise<Result<MadeFile>>,
    close: async () => void (await hand?.end()),
  }
}
