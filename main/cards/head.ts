import type { CardFacts } from './facts.ts'
import { dot, LINE } from './parts.ts'
import { rectangle } from './shapes.ts'
import type { Box, Point, Sheet, TextPlace } from './sheet.ts'

const TASK_BAR_MM = 62
/** A code, up to twelve characters, takes no more of the head than this. */
const CODE_MM = 48

/** An iron seen from its back, edge down, with its dot. */
const tag = (sheet: Sheet, { xMm, yMm, heightMm }: Box, dotCorner: 'left' | 'right'): void => {
  const widthMm = 12
  const [right, floor] = [xMm + widthMm, yMm + heightMm]
  const outline: readonly Point[] = [
    [xMm, yMm + 3],
    [xMm + 3, yMm],
    [right - 3, yMm],
    [right, yMm + 3],
    [right, floor],
    [xMm, floor],
  ]
  sheet.shape([outline], true, { strokeMm: LINE.frame })
  dot(sheet, dotCorner === 'left' ? xMm + 3.4 : right - 3.4, floor - 3.4, 2)
}

/** A name that would have to shrink below this size (mm) is set in two lines of it. */
const TWO_LINES_MM = 8.4

const nameText = (sheet: Sheet, name: string, place: TextPlace): void => {
  const { baselineMm, withinMm } = place
  if (sheet.widthMm(name, 'strong', TWO_LINES_MM) <= withinMm) sheet.text(name, place)
  else sheet.paragraph(name, { ...place, baselineMm: baselineMm - 6, sizeMm: TWO_LINES_MM }, 2)
}

/** The head: dot corner, code, name, and the task white in black. */
export const headPart = (sheet: Sheet, box: Box, { t, tool, job }: CardFacts): void => {
  const { xMm, yMm, widthMm, heightMm } = box
  const baselineMm = yMm + 13
  tag(sheet, box, tool.dotCorner)
  const code = sheet.text(tool.code, { xMm: xMm + 17, baselineMm, sizeMm: 15, withinMm: CODE_MM, face: 'figure' })
  const barMm = xMm + widthMm - TASK_BAR_MM
  const nameMm = code.xMm + code.widthMm + (tool.code === '' ? 0 : 6)
  nameText(sheet, tool.name, { xMm: nameMm, baselineMm, sizeMm: 15, withinMm: barMm - 4 - nameMm, face: 'strong' })
  sheet.shape([rectangle({ xMm: barMm, yMm, widthMm: TASK_BAR_MM, heightMm })], true, { fill: 0 })
  const middle = { xMm: barMm + TASK_BAR_MM / 2, baselineMm, withinMm: TASK_BAR_MM - 6, align: 'middle' } as const
  sheet.text(t(job.aim.task), { ...middle, sizeMm: 14, face: 'strong', white: true })
}
