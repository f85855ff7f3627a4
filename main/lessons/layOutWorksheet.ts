import type { TFunction } from 'i18next'
import { drawnShares } from '../../geometry/lesson/drawn.ts'
import { LINE } from '../cards/parts.ts'
import { rectangle } from '../cards/shapes.ts'
import { createSheet, type Sheet } from '../cards/sheet.ts'
import type { Typefaces } from '../cards/typefaces.ts'
import type { Page } from '../cards/writePdf.ts'
import type { PaperQuestion } from './worksheet.ts'

/** A4 upright, with the margin that any printer leaves free and a hole punch takes. */
const PAPER = { widthMm: 210, heightMm: 297, marginMm: 18 } as const
const WIDE_MM = PAPER.widthMm - 2 * PAPER.marginMm
const HEAD_MM = 34
const FOOT_MM = 18
const BOTTOM_MM = PAPER.heightMm - PAPER.marginMm - FOOT_MM
const BOX_MM = 5
const DRAWING_MM = { wide: 110, high: 34 } as const
/** Room to write a figure and a reason into. */
const LINE_MM = 12

/** What stands above the questions. */
export interface WorksheetHead {
  readonly title: string
  readonly about: string
  readonly seed: number
  readonly answers: boolean
}

interface Writing {
  readonly t: TFunction
  readonly head: WorksheetHead
  readonly sheet: Sheet
}

const rule = (sheet: Sheet, fromMm: number, toMm: number, yMm: number): void =>
  sheet.shape(
    [
      [
        [fromMm, yMm],
        [toMm, yMm],
      ],
    ],
    false,
    { strokeMm: LINE.measure },
  )

const writeHead = ({ t, head, sheet }: Writing, page: number): void => {
  const xMm = PAPER.marginMm
  const kind = t(head.answers ? 'worksheet:answers' : 'worksheet:questions')
  sheet.text(head.title, { xMm, baselineMm: PAPER.marginMm + 7, sizeMm: 8, withinMm: 120, face: 'strong' })
  const right = { xMm: xMm + WIDE_MM, align: 'right', withinMm: 52 } as const
  sheet.text(`${kind} · ${t('worksheet:page', { page })}`, { ...right, baselineMm: PAPER.marginMm + 6, sizeMm: 4 })
  sheet.text(t('worksheet:set', { seed: head.seed }), { ...right, baselineMm: PAPER.marginMm + 12, sizeMm: 4 })
  sheet.paragraph(head.about, { xMm, baselineMm: PAPER.marginMm + 14, sizeMm: 4, withinMm: 118 }, 2)
  if (!head.answers) {
    sheet.text(t('worksheet:name'), { xMm, baselineMm: PAPER.marginMm + 26, sizeMm: 4, withinMm: 30 })
    rule(sheet, xMm + 20, xMm + 110, PAPER.marginMm + 26.6)
    sheet.text(t('worksheet:day'), { xMm: xMm + 116, baselineMm: PAPER.marginMm + 26, sizeMm: 4, withinMm: 20 })
    rule(sheet, xMm + 130, xMm + WIDE_MM, PAPER.marginMm + 26.6)
  }
}

const writeFoot = ({ t, sheet }: Writing): void => {
  const place = { xMm: PAPER.marginMm, sizeMm: 3.2, withinMm: WIDE_MM, baselineMm: BOTTOM_MM + 10 } as const
  sheet.paragraph(t('teach:rules'), { ...place, face: 'strong' }, 2)
}

/** Edge in a frame of five stations; empty where it is to be drawn. */
const drawing = (sheet: Sheet, edgeMm: readonly number[] | null, topMm: number): void => {
  const box = { xMm: PAPER.marginMm, yMm: topMm, widthMm: DRAWING_MM.wide, heightMm: DRAWING_MM.high }
  sheet.shape([rectangle(box)], true, { strokeMm: LINE.measure })
  const x = (share: number) => box.xMm + 6 + share * (box.widthMm - 12)
  for (const share of drawnShares)
    sheet.shape(
      [
        [
          [x(share), topMm],
          [x(share), topMm + box.heightMm],
        ],
      ],
      false,
      { strokeMm: LINE.measure, dashMm: [1, 1] },
    )
  if (edgeMm === null) return
  const deepest = Math.max(...edgeMm, 1e-6)
  const y = (mm: number) => topMm + 4 + (mm / deepest) * (box.heightMm - 8)
  sheet.shape([drawnShares.map((share, k) => [x(share), y(edgeMm[k] as number)] as const)], false, {
    strokeMm: LINE.frame,
  })
}

const choices = ({ sheet, head }: Writing, { choices: texts, choice }: PaperQuestion, topMm: number): number => {
  let yMm = topMm
  texts.forEach((text, k) => {
    sheet.shape([rectangle({ xMm: PAPER.marginMm, yMm: yMm - BOX_MM + 1, widthMm: BOX_MM, heightMm: BOX_MM })], true, {
      strokeMm: LINE.outline,
      ...(head.answers && k === choice ? { fill: 0 } : {}),
    })
    const face = head.answers && k === choice ? 'strong' : 'text'
    const place = {
      xMm: PAPER.marginMm + BOX_MM + 3,
      baselineMm: yMm,
      sizeMm: 4.2,
      withinMm: WIDE_MM - 10,
      face,
    } as const
    yMm = sheet.paragraph(text, place, 2) + 2.4
  })
  return yMm
}

/** @returns where what comes next may begin */
const answering = (writing: Writing, question: PaperQuestion, topMm: number): number => {
  const { sheet, head, t } = writing
  if (question.kind === 'choose') return choices(writing, question, topMm)
  if (question.kind === 'draw') {
    drawing(sheet, head.answers ? question.edgeMm : null, topMm - 3)
    return topMm + DRAWING_MM.high + 4
  }
  const place = { xMm: PAPER.marginMm, baselineMm: topMm, sizeMm: 5, withinMm: WIDE_MM } as const
  if (head.answers) sheet.text(question.figure, { ...place, face: 'strong' })
  else {
    sheet.text(t('worksheet:guess'), { ...place, sizeMm: 4, withinMm: 40 })
    rule(sheet, PAPER.marginMm + 42, PAPER.marginMm + 90, topMm + 0.6)
  }
  return topMm + LINE_MM - 3
}

/** Writes one question. @returns where the next may begin */
const writeQuestion = (writing: Writing, question: PaperQuestion, number: number, topMm: number): number => {
  const { sheet, head } = writing
  const place = { xMm: PAPER.marginMm, sizeMm: 4.2, withinMm: WIDE_MM } as const
  let yMm = sheet.paragraph(
    `${number}. ${question.heading}`,
    { ...place, baselineMm: topMm, sizeMm: 5.2, face: 'strong' },
    2,
  )
  for (const paragraph of question.text) yMm = sheet.paragraph(paragraph, { ...place, baselineMm: yMm + 0.6 }, 6)
  yMm = sheet.paragraph(question.question, { ...place, baselineMm: yMm + 1.4, face: 'strong' }, 4)
  yMm = answering(writing, question, yMm + 3)
  if (head.answers) yMm = sheet.paragraph(question.why, { ...place, baselineMm: yMm + 1 }, 6)
  return yMm + 7
}

/** @returns the pages of a worksheet; a question that does not fit begins the next one */
export const layOutWorksheet = (
  head: WorksheetHead,
  questions: readonly PaperQuestion[],
  t: TFunction,
  typefaces: Typefaces,
): readonly Page[] => {
  const pages: Page[] = []
  const begin = (): Writing => {
    const sheet = createSheet(typefaces)
    pages.push({ widthMm: PAPER.widthMm, heightMm: PAPER.heightMm, items: sheet.items })
    const writing = { t, head, sheet }
    writeHead(writing, pages.length)
    writeFoot(writing)
    return writing
  }
  const startMm = PAPER.marginMm + HEAD_MM
  let writing = begin()
  let yMm = startMm
  questions.forEach((question, k) => {
    // Tried on a sheet of its own first, which tells its height.
    const endMm = writeQuestion({ ...writing, sheet: createSheet(typefaces) }, question, k + 1, yMm)
    if (endMm > BOTTOM_MM && yMm > startMm) {
      writing = begin()
      yMm = startMm
    }
    yMm = writeQuestion(writing, question, k + 1, yMm)
  })
  return pages
}
