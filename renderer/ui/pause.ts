/** Lets the window see to what has come in meanwhile, between two pieces of work. */
export const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve))
