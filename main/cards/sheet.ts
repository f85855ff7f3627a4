import { type Face, FIGURE_SHARE, type Typefaces } from './typefaces.ts'

/** Places on the card: mm from the upper left corner of an A4 page lying on its side, y downwards. */
export const PAGE = { widthMm: 297, heightMm: 210 } as const

export type Point = readonly [xMm: number, yMm: number]

export interface Box {
  readonly xMm: number
  readonly yMm: number
  readonly widthMm: number
  readonly heightMm: number
}

/** A line of text. `box` is what it covers, from the tops of its letters to its descenders. */
export interface TextItem {
  readonly kind: 'text'
  readonly text: string
  readonly face: Face
  readonly sizeMm: number
  readonly xMm: number
  readonly baselineMm: number
  readonly white: boolean
  readonly box: Box
}

/** Grey levels: 0 black, 1 white. */
export interface ShapeStyle {
  readonly strokeMm?: number
  readonly fill?: number
  readonly dashMm?: readonly number[]
}

/** One outline or more, drawn and filled alike. */
export interface ShapeItem extends ShapeStyle {
  readonly kind: 'shape'
  readonly outlines: readonly (readonly Point[])[]
  readonly closed: boolean
}

export type Item = TextItem | ShapeItem

export interface TextPlace {
  readonly xMm: number
  readonly baselineMm: number
  readonly sizeMm: number
  /** Room there is; text shrinks to it, then is cut. Figures only shrink: a cut figure is a wrong one. */
  readonly withinMm: number
  readonly face?: Face
  readonly align?: 'left' | 'middle' | 'right'
  readonly white?: boolean
}

/** Letters rise and hang by these shares of their size (ascenders 0.72, descenders 0.2 in the files used). */
const RISE = 0.72
const HANG = 0.2
/** Text is set no smaller than this share of its wanted size; below it, it is cut instead. */
const LEAST_SHRINK = 0.55
const ELLIPSIS = '…'

/** The size (mm) that a figure of a wanted height is set in. */
export const sizeForFigure = (heightMm: number): number => heightMm / FIGURE_SHARE

/** A sheet under the pen. */
export interface Sheet {
  readonly items: Item[]
  /** Sets one line. @returns what it covers, for what is set beside it */
  readonly text: (text: string, place: TextPlace) => Box
  /** Sets a paragraph within a number of lines. @returns the baseline that would come next */
  readonly paragraph: (text: string, place: TextPlace, mostLines: number) => number
  readonly shape: (outlines: readonly (readonly Point[])[], closed: boolean, style: ShapeStyle) => void
  readonly widthMm: (text: string, face: Face, sizeMm: number) => number
}

/** Distance of baselines over size, in paragraphs. */
const LEADING = 1.18

const cut = (text: string, fits: (candidate: string) => boolean): string => {
  const characters = Array.from(text)
  while (characters.length > 0 && !fits(characters.join('').trimEnd() + ELLIPSIS)) characters.pop()
  return characters.join('').trimEnd() + ELLIPSIS
}

const breakLines = (words: readonly string[], fits: (line: string) => boolean): string[] => {
  const lines: string[] = []
  for (const word of words) {
    const longer = lines.length > 0 ? `${lines.at(-1)} ${word}` : word
    if (lines.length > 0 && fits(longer)) lines[lines.length - 1] = longer
    else lines.push(word)
  }
  return lines
}

/** @param typefaces what text is measured in @returns an empty sheet */
export const createSheet = (typefaces: Typefaces): Sheet => {
  const items: Item[] = []
  const widthMm: Sheet['widthMm'] = (text, face, sizeMm) =>
    typefaces.widthMm(typefaces.printable(text, face), face, sizeMm)

  const text: Sheet['text'] = (words, place) => {
    const { baselineMm, withinMm, face = 'text', align = 'left', white = false } = place
    const whole = typefaces.printable(words, face)
    const needMm = typefaces.widthMm(whole, face, place.sizeMm)
    const sizeMm = place.sizeMm * Math.max(face === 'figure' ? 0 : LEAST_SHRINK, Math.min(1, withinMm / needMm))
    const fits = (candidate: string) => typefaces.widthMm(candidate, face, sizeMm) <= withinMm + 1e-9
    const shown = fits(whole) ? whole : cut(whole, fits)
    const lineMm = typefaces.widthMm(shown, face, sizeMm)
    const xMm = place.xMm - { left: 0, middle: lineMm / 2, right: lineMm }[align]
    const [rise, hang] = face === 'figure' ? [FIGURE_SHARE, 0.02] : [RISE, HANG]
    const box = { xMm, yMm: baselineMm - rise * sizeMm, widthMm: lineMm, heightMm: (rise + hang) * sizeMm }
    items.push({ kind: 'text', text: shown, face, sizeMm, xMm, baselineMm, white, box })
    return box
  }

  const paragraph: Sheet['paragraph'] = (words, place, mostLines) => {
    const { face = 'text', sizeMm, withinMm } = place
    const fits = (line: string) => widthMm(line, face, sizeMm) <= withinMm
    const lines = breakLines(words.trim().split(/\s+/), fits)
    const shown = lines.slice(0, mostLines)
    if (lines.length > mostLines) shown[mostLines - 1] = cut(`${shown[mostLines - 1]} ${lines[mostLines]}`, fits)
    shown.forEach((line, i) => {
      text(line, { ...place, baselineMm: place.baselineMm + i * LEADING * sizeMm })
    })
    return place.baselineMm + shown.length * LEADING * sizeMm
  }

  const shape: Sheet['shape'] = (outlines, closed, style) => {
    items.push({ kind: 'shape', outlines, closed, ...style })
  }
  return { items, text, paragraph, shape, widthMm }
}
