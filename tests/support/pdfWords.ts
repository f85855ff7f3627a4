import { inflateSync } from 'node:zlib'
import { PDFDict, PDFDocument, PDFName, PDFRawStream } from 'pdf-lib'
import { contentOf } from './pdfContent.ts'

const written = (stream: unknown): string =>
  stream instanceof PDFRawStream ? inflateSync(stream.getContents()).toString('latin1') : ''

/** UTF-16 in hexadecimal, as maps of fonts write it. */
const charactersOf = (hex: string): string =>
  String.fromCharCode(...Array.from(hex.match(/.{4}/g) ?? [], (unit) => Number.parseInt(unit, 16)))

/** Which characters each glyph of a page's fonts stands for, by the font's name on the page. */
const alphabetsOf = (pdf: PDFDocument, page: number): ReadonlyMap<string, ReadonlyMap<string, string>> => {
  const fonts = pdf.getPage(page).node.Resources()?.lookup(PDFName.of('Font'), PDFDict)
  return new Map(
    (fonts?.entries() ?? []).map(([name, ref]) => {
      const map = written(pdf.context.lookup((pdf.context.lookup(ref) as PDFDict).get(PDFName.of('ToUnicode'))))
      const pairs = map.matchAll(/^<([0-9a-f]+)> <([0-9a-f]+)>$/gim)
      return [
        name.asString(),
        new Map(Array.from(pairs, ([, glyph, hex]) => [glyph as string, charactersOf(hex as string)])),
      ]
    }),
  )
}

/** @returns what a page of a PDF says, piece by piece in the order it was written, a line each */
export const wordsOf = async (bytes: Uint8Array, page = 0): Promise<string> => {
  const alphabets = alphabetsOf(await PDFDocument.load(bytes), page)
  let alphabet: ReadonlyMap<string, string> = new Map()
  const lines: string[] = []
  for (const [, font, text] of (await contentOf(bytes, page)).matchAll(/(\/\S+) [\d.]+ Tf|<([0-9A-F]+)> Tj/g)) {
    if (font) alphabet = alphabets.get(font) ?? alphabet
    if (text) lines.push((text.match(/.{4}/g) ?? []).map((glyph) => alphabet.get(glyph) ?? '').join(''))
  }
  return lines.join('\n')
}
