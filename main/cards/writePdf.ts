import fontkit from '@pdf-lib/fontkit'
import { grayscale, PDFDocument, type PDFFont, type PDFPage } from 'pdf-lib'
import { MM_PER_INCH } from '../../geometry/units.ts'
import { type Item, PAGE, type Point, type ShapeItem, type TextItem } from './sheet.ts'
import type { Typefaces } from './typefaces.ts'

/** PDF counts in points, 72 to the inch, from the lower left corner. */
const POINTS_PER_MM = 72 / MM_PER_INCH
/** Thousandths of a millimetre are finer than any printer. */
const DECIMALS = 3

const outlineText = (outline: readonly Point[], closed: boolean): string =>
  outline.map(([x, y], i) => `${i === 0 ? 'M' : 'L'} ${x.toFixed(DECIMALS)} ${y.toFixed(DECIMALS)}`).join(' ') +
  (closed ? ' Z' : '')

const drawShape = (page: PDFPage, shape: ShapeItem): void => {
  const { outlines, closed, strokeMm, fill, dashMm } = shape
  page.drawSvgPath(outlines.map((outline) => outlineText(outline, closed)).join(' '), {
    x: 0,
    y: PAGE.heightMm * POINTS_PER_MM,
    scale: POINTS_PER_MM,
    ...(fill === undefined ? {} : { color: grayscale(fill) }),
    ...(strokeMm === undefined ? {} : { borderColor: grayscale(0), borderWidth: strokeMm }),
    ...(dashMm === undefined ? {} : { borderDashArray: [...dashMm] }),
  })
}

const drawText = (page: PDFPage, item: TextItem, typefaces: Typefaces, fonts: ReadonlyMap<string, PDFFont>): void => {
  const size = item.sizeMm * POINTS_PER_MM
  let x = item.xMm * POINTS_PER_MM
  for (const { file, text } of typefaces.runs(item.text, item.face)) {
    const font = fonts.get(file) as PDFFont
    const y = (PAGE.heightMm - item.baselineMm) * POINTS_PER_MM
    page.drawText(text, { x, y, size, font, color: grayscale(item.white ? 1 : 0) })
    x += font.widthOfTextAtSize(text, size)
  }
}

/** Only the files that some text needs, each cut down to the letters used. */
const embedFonts = async (pdf: PDFDocument, items: readonly Item[], typefaces: Typefaces) => {
  const texts = items.filter((item) => item.kind === 'text')
  const files = new Set(texts.flatMap(({ text, face }) => typefaces.runs(text, face).map(({ file }) => file)))
  const fonts = new Map<string, PDFFont>()
  for (const file of [...files].sort()) {
    fonts.set(file, await pdf.embedFont(typefaces.bytesOf(file), { subset: true }))
  }
  return fonts
}

/** Writes one page. The same items, title and time give the same bytes. */
export const writePdf = async (
  items: readonly Item[],
  typefaces: Typefaces,
  about: { readonly title: string; readonly program: string; readonly at: Date },
): Promise<Uint8Array> => {
  const pdf = await PDFDocument.create({ updateMetadata: false })
  pdf.registerFontkit(fontkit)
  pdf.setTitle(about.title)
  pdf.setProducer(about.program)
  pdf.setCreator(about.program)
  pdf.setCreationDate(about.at)
  pdf.setModificationDate(about.at)
  const fonts = await embedFonts(pdf, items, typefaces)
  const page = pdf.addPage([PAGE.widthMm * POINTS_PER_MM, PAGE.heightMm * POINTS_PER_MM])
  for (const item of items) {
    if (item.kind === 'shape') drawShape(page, item)
    else drawText(page, item, typefaces, fonts)
  }
  return pdf.save()
}
