import { app } from 'electron'
import { filesNamed } from '../opened/offerFile.ts'
import { programWindow } from './programWindow.ts'

/** Files asked for from outside: they wait until somebody opens them. */
export interface Outside {
  give(open: (paths: readonly string[]) => Promise<void>): void
}

const showAgain = (): void => {
  const window = programWindow()
  if (window?.isMinimized()) window.restore()
  window?.focus()
}

/**
 * Listens for files that the system opens with the program: with its start, by a second start, or on a Mac by its own event,
 * which comes before all is ready.
 *
 * @param first named at the start
 */
export const openFromOutside = (first: readonly string[]): Outside => {
  let waiting = [...first]
  let open: Parameters<Outside['give']>[0] | null = null
  const take = (paths: readonly string[]): void => {
    waiting.push(...paths)
    if (open === null || waiting.length === 0) return
    const taken = waiting
    waiting = []
    void open(taken)
  }
  app.on('second-instance', (_event, args, folder) => {
    showAgain()
    take(filesNamed(args.slice(1), folder))
  })
  app.on('open-file', (event, path) => {
    event.preventDefault()
    take([path])
  })
  return {
    give: (given) => {
      open = given
      take([])
    },
  }
}
