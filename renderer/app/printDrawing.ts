import './print.css'

/** Faces of the pages, which have to be there before something is printed in them. */
const FACES = ['400 16px "Sofia Sans"', '600 16px "Sofia Sans"', '600 16px "Sofia Sans Semi Condensed"']

/** Lays a drawing over the page for the printer alone: on paper it is all there is. */
const layForPrinter = (svg: string): HTMLElement => {
  const drawing = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement
  const sheet = document.createElement('div')
  sheet.className = 'print-sheet'
  sheet.append(document.importNode(drawing, true))
  document.body.append(sheet)
  return sheet
}

/** Opens the system's box for printing with one drawing, A4 on its side. @param svg in mm, made by the program */
export const printDrawing = async (svg: string): Promise<void> => {
  await Promise.all(FACES.map((face) => document.fonts.load(face)))
  const sheet = layForPrinter(svg)
  addEventListener('afterprint', () => sheet.remove(), { once: true })
  print()
}
