import { inflateSync } from 'node:zlib'
import { PDFArray, PDFDocument, PDFName, PDFRawStream, PDFRef } from 'pdf-lib'

/** The content of one page of a PDF, as written. */
export const contentOf = async (bytes: Uint8Array, page = 0): Promise<string> => {
  const pdf = await PDFDocument.load(bytes)
  const contents = pdf.getPage(page).node.get(PDFName.of('Contents'))
  const refs = contents instanceof PDFRef ? [contents] : contents instanceof PDFArray ? contents.asArray() : []
  return refs
    .map((ref) => pdf.context.lookup(ref))
    .map((stream) => (stream instanceof PDFRawStream ? inflateSync(stream.getContents()).toString('latin1') : ''))
    .join('\n')
}
