import { call } from '../transport.ts'

/** A page that fails again and again fails in the same way: so many are written down of one opening. */
const MOST_NOTED = 5
const MOST_STACK = 20_000

let noted = 0

/** Has a fault of the page written down at the host, without anything of the data. */
export const noteFault = (error: unknown): void => {
  if (!(error instanceof Error) || noted >= MOST_NOTED) return
  noted += 1
  const { name, message, stack = '' } = error
  void call('report.note', {
    name: name.slice(0, 60),
    message: message.slice(0, 2000),
    stack: stack.slice(0, MOST_STACK),
  })
}

/** Hears of faults that nothing in the page has dealt with. */
export const hearFaults = (): void => {
  addEventListener('error', ({ error }) => noteFault(error))
  addEventListener('unhandledrejection', ({ reason }) => noteFault(reason))
}
