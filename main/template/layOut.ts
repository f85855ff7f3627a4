import type { TFunction } from 'i18next'
import type { Profile } from '../../geometry/profile.ts'
import { dot, LINE } from '../cards/parts.ts'
import { createSheet, type Item, PAGE, type Point, type Sheet } from '../cards/sheet.ts'
import type { Typefaces } from '../cards/typefaces.ts'
import { depthFactor } from './curves.ts'
import { scaleBars } from './scaleBars.ts'

/** What a template is drawn from; all lengths in mm. */
export interface TemplateFacts {
  readonly code: string
  readonly name: string
  readonly dotCorner: 'left' | 'right'
  readonly wanted: Profile
  /** Null: left out. */
  readonly predicted: Profile | null
  /** Width, relief and radius in words and the workshop's unit. */
  readonly figures: string
  /** After how many sweeps the prediction holds. */
  readonly sweeps: number
  /** When it was made, as a day. */
  readonly day: string
  /** Texts of the namespace `out`. */
  readonly t: TFunction
}

/** A part of the drawing by name, so that a program which opens it can take it apart. */
export interface Layer {
  readonly name: 'edge' | 'predicted' | 'guides' | 'scale' | 'words'
  readonly items: readonly Item[]
}

const MARGIN_MM = 10
const WIDE_MM = PAGE.widthMm - 2 * MARGIN_MM
/** The edge's foremost point on the page, and the plain iron drawn behind the deepest corner. */
const EDGE_MM = 84
const BODY_MM = 26
/** Middles of the true template and the magnified one: irons up to 120 mm stand side by side. */
const TRUE_MM = 74
const MAGNIFIED_MM = 223
/** Room for the depth of the magnified one. */
const DEPTH_ROOM_MM = 44

/** One iron on the page, back up, edge up: across true, depth times a factor. */
interface Place {
  readonly middleMm: number
  readonly factor: number
  readonly bottomMm: number
}

const deepestOf = ({ wanted, predicted }: TemplateFacts): number =>
  [...wanted.behindMm, ...(predicted?.behindMm ?? [])].reduce((a, b) => Math.max(a, b))

const lineOf = ({ uMm, behindMm }: Profile, { middleMm, factor }: Place): readonly Point[] =>
  uMm.map((u, i): Point => [middleMm + u, EDGE_MM + (behindMm[i] as number) * factor])

const drawEdge = (sheet: Sheet, { wanted }: TemplateFacts, place: Place): void => {
  const line = lineOf(wanted, place)
  const [left, right] = [line[0] as Point, line.at(-1) as Point]
  sheet.shape([[...line, [right[0], place.bottomMm], [left[0], place.bottomMm]]], true, { strokeMm: 0.2 })
}

/** The straight line through the foremost point, and the iron's middle. */
const drawGuides = (sheet: Sheet, { wanted, dotCorner }: TemplateFacts, place: Place): void => {
  const { middleMm, bottomMm } = place
  const [fromMm, toMm] = [wanted.uMm[0] as number, wanted.uMm.at(-1) as number]
  const datum: readonly Point[] = [
    [middleMm + fromMm, EDGE_MM],
    [middleMm + toMm, EDGE_MM],
  ]
  const middle: readonly Point[] = [
    [middleMm, EDGE_MM],
    [middleMm, bottomMm],
  ]
  sheet.shape([datum, middle], false, { strokeMm: 0.12, dashMm: [2, 1.5] })
  const radiusMm = Math.min(1.6, (toMm - fromMm) / 8)
  dot(sheet, middleMm + (dotCorner === 'left' ? fromMm + 3 * radiusMm : toMm - 3 * radiusMm), bottomMm - 12, radiusMm)
}

const drawWords = (sheet: Sheet, { wanted, t }: TemplateFacts, place: Place, caption: readonly string[]): void => {
  const { middleMm, bottomMm } = place
  const halfMm = wanted.uMm.at(-1) as number
  const room = { sizeMm: 3.8, withinMm: halfMm - 3, baselineMm: bottomMm - 3 }
  sheet.text(t('template.left'), { ...room, xMm: middleMm - halfMm + 1.5 })
  sheet.text(t('template.right'), { ...room, xMm: middleMm + halfMm - 1.5, align: 'right' })
  caption.forEach((words, i) => {
    const face = i === 0 ? 'strong' : 'text'
    const baselineMm = bottomMm + 7 + 5.5 * i
    sheet.text(words, { xMm: middleMm, baselineMm, sizeMm: 4.4, withinMm: 130, align: 'middle', face })
  })
}

const drawHead = (sheet: Sheet, { t, code, name, figures, day }: TemplateFacts): void => {
  const line = { xMm: MARGIN_MM, withinMm: WIDE_MM }
  const title = t('template.title', { tool: [code, name].filter((word) => word !== '').join(' ') })
  sheet.text(title, { ...line, baselineMm: 17, sizeMm: 7, face: 'strong', withinMm: WIDE_MM - 50 })
  const made = t('template.made', { day })
  sheet.text(made, { xMm: MARGIN_MM + WIDE_MM, baselineMm: 17, sizeMm: 3.8, withinMm: 46, align: 'right' })
  sheet.text(figures, { ...line, baselineMm: 25, sizeMm: 5 })
  sheet.text(t('template.print'), { ...line, baselineMm: 32.5, sizeMm: 4.4, face: 'strong' })
  sheet.text(t('template.lie'), { ...line, baselineMm: 64, sizeMm: 4.4 })
}

const places = (deepestMm: number): readonly [Place, Place | null] => {
  const at = (middleMm: number, factor: number): Place => ({
    middleMm,
    factor,
    bottomMm: EDGE_MM + deepestMm * factor + BODY_MM,
  })
  const factor = depthFactor(deepestMm, DEPTH_ROOM_MM)
  return [at(TRUE_MM, 1), factor > 1 ? at(MAGNIFIED_MM, factor) : null]
}

/**
 * A page to lay an iron on: the wanted edge 1 : 1, beside it the same with its depth magnified, since a tenth of a millimetre
 * cannot be seen on paper, and two bars by which the print is checked.
 */
export const layOutTemplate = (facts: TemplateFacts, typefaces: Typefaces): readonly Layer[] => {
  const { t, predicted, sweeps } = facts
  const [whole, magnified] = places(deepestOf(facts))
  const both = magnified === null ? [whole] : [whole, magnified]
  const layer = (name: Layer['name'], draw: (sheet: Sheet) => void): Layer => {
    const sheet = createSheet(typefaces)
    draw(sheet)
    return { name, items: sheet.items }
  }
  const note = predicted ? [t('template.predicted', { count: sweeps })] : []
  return [
    layer('edge', (sheet) => {
      for (const place of both) drawEdge(sheet, facts, place)
    }),
    layer('predicted', (sheet) => {
      if (predicted === null) return
      for (const place of both)
        sheet.shape([lineOf(predicted, place)], false, { strokeMm: LINE.measure, dashMm: [3, 1.5] })
    }),
    layer('guides', (sheet) => {
      for (const place of both) drawGuides(sheet, facts, place)
    }),
    layer('scale', (sheet) => scaleBars(sheet, MARGIN_MM, 47, t)),
    layer('words', (sheet) => {
      drawHead(sheet, facts)
      drawWords(sheet, facts, whole, [t('template.true'), ...note])
      if (magnified)
        drawWords(sheet, facts, magnified, [t('template.magnified', { factor: magnified.factor }), ...note])
    }),
  ]
}
