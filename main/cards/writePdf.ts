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

/** A page to be written: its size, and what stands on it. */
export interface Page {
  readonly widthMm: number
  readonly heightMm: number
  readonly items: readonly Item[]
}

const drawShape = (page: PDFPage, shape: ShapeItem): void => {
  const { outlines, closed, strokeMm, fill, dashMm } = shape
  page.drawSvgPath(outlines.map((outline) => outlineText(outline, closed)).join(' '), {
    x: 0,
    y: page.getHeight(),
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
    const y = page.getHeight() - item.baselineMm * POINTS_PER_MM
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

interface About {
  readonly title: string
  readonly program: string
  readonly at: Date
}

const drawPage = (page: PDFPage, items: readonly Item[], typefaces: Typefaces, fonts: ReadonlyMap<string, PDFFont>) => {
  for (const item of items) {
    if (item.kind === 'shape') drawShape(page, item)
    else drawText(page, item, typefaces, fonts)
  }
}

/** Writes pages one after the other. The same pages, title and time give the same bytes. */
export const writePages = async (pages: readonly Page[], typefaces: Typefaces, about: About): Promise<Uint8Array> => {
  const pdf = await PDFDocument.create({ updateMetadata: false })
  pdf.registerFontkit(fontkit)
  pdf.setTitle(about.title)
  pdf.setProducer(about.program)
  pdf.setCreator(about.program)
  pdf.setCreationDate(about.at)
  pdf.setModificationDate(about.at)
  const fonts = await embedFonts(
    pdf,
    pages.flatMap(({ items }) => items),
    typefaces,
  )
  for (const { widthMm, heightMm, items } of pages)
    drawPage(pdf.addPage([widthMm * POINTS_PER_MM, heightMm * POINTS_PER_MM]), items, typefaces, fonts)
  return pdf.save()
}

/** Writes one page, A4 on its side. */
export const writePdf = (items: readonly Item[], typefaces: Typefaces, about: About): Promise<Uint8Array> =>
  writePages([{ ...PAGE, items }], typefaces, about)
