import { type Item, PAGE, type Point, type ShapeItem, type TextItem } from '../cards/sheet.ts'
import type { Face } from '../cards/typefaces.ts'

/** What is drawn together, by its name. */
interface Layer {
  readonly name: string
  readonly items: readonly Item[]
}

/** Ten-thousandths of a millimetre: far finer than any line, and short enough to read. */
const DECIMALS = 4

/** The faces of paper as a reader without them may fill in; lengths are kept by `textLength`. */
const faces: Readonly<Record<Face, string>> = {
  text: 'font-family="Sofia Sans, sans-serif"',
  strong: 'font-family="Sofia Sans, sans-serif" font-weight="600"',
  figure: 'font-family="Sofia Sans Semi Condensed, sans-serif" font-weight="600"',
}

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }
const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => escapes[sign] as string)

const number = (mm: number): string => String(Number(mm.toFixed(DECIMALS)))

const pathOf = (outline: readonly Point[], closed: boolean): string =>
  outline.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${number(x)} ${number(y)}`).join('') + (closed ? 'Z' : '')

const greyOf = (level: number): string => {
  const part = Math.round(255 * level)
  return `rgb(${part},${part},${part})`
}

const shapeOf = ({ outlines, closed, strokeMm, fill, dashMm }: ShapeItem): string => {
  const dash = dashMm ? ` stroke-dasharray="${dashMm.join(' ')}"` : ''
  const stroke = strokeMm === undefined ? '' : ` stroke="#000" stroke-width="${strokeMm}"${dash}`
  const path = outlines.map((outline) => pathOf(outline, closed)).join('')
  return `<path d="${path}" fill="${fill === undefined ? 'none' : greyOf(fill)}"${stroke}/>`
}

const textOf = ({ text, face, sizeMm, xMm, baselineMm, box, white }: TextItem): string =>
  `<text x="${number(xMm)}" y="${number(baselineMm)}" font-size="${number(sizeMm)}" textLength="${number(box.widthMm)}" ` +
  `lengthAdjust="spacingAndGlyphs" ` +
  `fill="${white ? '#fff' : '#000'}" ${faces[face]}>${escaped(text)}</text>`

const itemOf = (item: Item): string => (item.kind === 'shape' ? shapeOf(item) : textOf(item))

const groupOf = ({ name, items }: Layer): string => `<g id="${name}">\n${items.map(itemOf).join('\n')}\n</g>`

/** A drawing as SVG whose unit is the millimetre: printed or placed at its own size it is 1 : 1. */
export const writeSvg = (layers: readonly Layer[], title: string): string => {
  const { widthMm, heightMm } = PAGE
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}">`,
    `<title>${escaped(title)}</title>`,
    ...layers.map(groupOf),
    '</svg>\n',
  ].join('\n')
}
