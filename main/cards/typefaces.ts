import { existsSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import fontkit, { type Font } from '@pdf-lib/fontkit'

/** What a piece of text is set in: running text, strong text, or large figures. */
export type Face = 'text' | 'strong' | 'figure'

/** Two files a face: the second holds the accented letters that the first lacks. */
const files: Readonly<Record<Face, readonly string[]>> = {
  text: ['sofia-sans-latin-400-normal.woff', 'sofia-sans-latin-ext-400-normal.woff'],
  strong: ['sofia-sans-latin-600-normal.woff', 'sofia-sans-latin-ext-600-normal.woff'],
  figure: ['sofia-sans-semi-condensed-latin-600-normal.woff', 'sofia-sans-semi-condensed-latin-ext-600-normal.woff'],
}

/** Height of a figure over the size it is set in: 655 of 1000 units in all files above (their cap height). */
export const FIGURE_SHARE = 0.655

/** Stands for a character that no file has. */
const UNKNOWN = '?'
/** Marks and format characters that change the character before them and may be left out without harm. */
const DISPENSABLE = /[\p{M}\p{Cf}]/u

/** A stretch of text that one file can set. */
export interface Run {
  readonly file: string
  readonly text: string
}

/** Measures and splits text as it will stand on paper. */
export interface Typefaces {
  /** Text with spaces tidied and every character the face lacks replaced or left out. */
  readonly printable: (text: string, face: Face) => string
  /** @param text printable in this face @param sizeMm the size it is set in */
  readonly widthMm: (text: string, face: Face, sizeMm: number) => number
  readonly runs: (text: string, face: Face) => readonly Run[]
  readonly bytesOf: (file: string) => Uint8Array
}

/** The nearest folder `assets/fonts` above this module, built or not. */
const fontFolder = (): string => {
  const here = dirname(fileURLToPath(import.meta.url))
  for (let folder = here; ; folder = dirname(folder)) {
    const fonts = join(folder, 'assets', 'fonts')
    if (existsSync(fonts) || folder === dirname(folder)) return fonts
  }
}

interface Loaded {
  readonly file: string
  readonly bytes: Uint8Array
  readonly font: Font
}

const load = (folder: string, file: string): Loaded => {
  const bytes = new Uint8Array(readFileSync(join(folder, file)))
  return { file, bytes, font: fontkit.create(bytes) }
}

const has = (loaded: Loaded, character: string): boolean =>
  loaded.font.hasGlyphForCodePoint(character.codePointAt(0) as number)

const splitRuns = (fonts: readonly Loaded[], text: string): readonly Run[] => {
  const runs: { file: string; text: string }[] = []
  for (const character of text) {
    const { file } = fonts.find((loaded) => has(loaded, character)) ?? (fonts[0] as Loaded)
    const last = runs.at(-1)
    if (last?.file === file) last.text += character
    else runs.push({ file, text: character })
  }
  return runs
}

const printableIn = (fonts: readonly Loaded[], text: string): string => {
  const tidy = text
    .normalize('NFC')
    .replace(/[\s\p{Cc}]+/gu, ' ')
    .trim()
  return Array.from(tidy, (character) => {
    if (!DISPENSABLE.test(character) && fonts.some((loaded) => has(loaded, character))) return character
    return DISPENSABLE.test(character) ? '' : UNKNOWN
  }).join('')
}

/** Advance widths without kerning, since the writer sets glyph after glyph. */
const unitsOf = ({ font }: Loaded, text: string): number =>
  font.layout(text).glyphs.reduce((sum, glyph) => sum + glyph.advanceWidth, 0) / font.unitsPerEm

/** Reads the card's typefaces; throws when the program's own files are missing. */
export const loadTypefaces = (): Typefaces => {
  const folder = fontFolder()
  const loadAll = (face: Face) => files[face].map((file) => load(folder, file))
  const fonts = { text: loadAll('text'), strong: loadAll('strong'), figure: loadAll('figure') }
  const byFile = new Map(Object.values(fonts).flatMap((list) => list.map((loaded) => [loaded.file, loaded] as const)))
  const loadedOf = (file: string) => byFile.get(file) as Loaded
  const runs = (text: string, face: Face) => splitRuns(fonts[face], text)
  return {
    printable: (text, face) => printableIn(fonts[face], text),
    widthMm: (text, face, sizeMm) =>
      runs(text, face).reduce((sum, run) => sum + unitsOf(loadedOf(run.file), run.text), 0) * sizeMm,
    runs,
    bytesOf: (file) => loadedOf(file).bytes,
  }
}
