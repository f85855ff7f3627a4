/** The program's own lessons in German. */
export const german: readonly unknown[] = []
