/**
 * The kinds of file that can be opened: by a double click, on the command line, from the menu, by dropping. `ending` is our
 * own: files are saved with it and the system is told that they are this program's. `also` are other endings they are met by.
 */
export const fileKinds = {
  job: { ending: 'cwjob', also: ['job.json'], mediaType: 'application/json' },
  lesson: { ending: 'cwlesson', also: ['lesson.json'], mediaType: 'application/json' },
  rack: { ending: 'cwrack', also: ['zip', 'json', 'csv', 'tsv'], mediaType: 'application/zip' },
} as const

export type FileKind = keyof typeof fileKinds
export const fileKindNames = Object.keys(fileKinds) as FileKind[]

/** All endings of a kind, without their dot. */
export const endingsOf = (kind: FileKind): readonly string[] => [fileKinds[kind].ending, ...fileKinds[kind].also]

const hasEnding = (name: string, ending: string): boolean => `.${name.toLowerCase()}`.endsWith(`.${ending}`)

/** @returns what a file of this name is; of two endings the longer says; null: nothing that can be opened here */
export const kindOfFile = (name: string): FileKind | null => {
  const all = fileKindNames.flatMap((kind) => endingsOf(kind).map((ending) => ({ kind, ending })))
  const found = all.filter(({ ending }) => hasEnding(name, ending)).sort((a, b) => b.ending.length - a.ending.length)
  return found[0]?.kind ?? null
}

/** As an input of the page lists the files it takes. */
export const acceptOf = (kind: FileKind): string =>
  endingsOf(kind)
    .map((ending) => `.${ending}`)
    .join(',')
