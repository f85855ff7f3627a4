import { failed, ok, problem, type Result } from '../../../geometry/result.ts'
import { drawFiner } from '../../scene/finer.ts'
import { copyView, type ViewCopy } from './copyView.ts'
import { facesInUse } from './faces.ts'

/** Ground left free round a view, so that nothing stands at the picture's very rim (CSS px). */
const RIM_PX = 12

/** Width and height of a view's picture in CSS pixels, rim and all. */
export const pictureSize = (element: HTMLElement): { readonly widthPx: number; readonly heightPx: number } => {
  const { width, height } = element.getBoundingClientRect()
  return { widthPx: width + 2 * RIM_PX, heightPx: height + 2 * RIM_PX }
}

/** The copy as a drawing that stands by itself. */
const drawingOf = ({ markup, widthPx, heightPx }: ViewCopy, faces: string, pxPerCssPx: number): string => {
  const [width, height] = [widthPx + 2 * RIM_PX, heightPx + 2 * RIM_PX]
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width * pxPerCssPx}" height="${height * pxPerCssPx}" ` +
    `viewBox="${-RIM_PX} ${-RIM_PX} ${width} ${height}"><style>${faces}</style>` +
    `<foreignObject width="${widthPx}" height="${heightPx}" style="overflow:visible">${markup}</foreignObject></svg>`
  )
}

/** A drawing in an address of its own: from there a canvas may be read again, which it may not from a blob. */
const imageOf = async (drawing: string): Promise<HTMLImageElement> => {
  const image = new Image()
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(drawing)}`
  await image.decode()
  return image
}

/** What lies under the copy: the page's ground, grounds behind canvases, and the canvases, as fine as they can be had. */
const drawUnder = (
  context: CanvasRenderingContext2D,
  { grounds, canvases }: ViewCopy,
  pxPerCssPx: number,
  wheelSeconds: number | null,
): void => {
  const { width, height } = context.canvas
  context.setTransform(1, 0, 0, 1, 0, 0)
  context.fillStyle = getComputedStyle(document.body).backgroundColor
  context.fillRect(0, 0, width, height)
  context.setTransform(pxPerCssPx, 0, 0, pxPerCssPx, RIM_PX * pxPerCssPx, RIM_PX * pxPerCssPx)
  context.imageSmoothingQuality = 'high'
  for (const { colour, xPx, yPx, widthPx, heightPx } of grounds) {
    context.fillStyle = colour
    context.fillRect(xPx, yPx, widthPx, heightPx)
  }
  for (const { canvas, xPx, yPx, widthPx, heightPx } of canvases) {
    drawFiner(canvas, { pxPerCssPx, wheelSeconds }, (drawn) => context.drawImage(drawn, xPx, yPx, widthPx, heightPx))
  }
}

/**
 * Draws a view as it stands now over a whole canvas.
 * @param wheelSeconds how long the wheel has turned; null: as it stands
 */
export const drawPicture = async (
  canvas: HTMLCanvasElement,
  element: HTMLElement,
  wheelSeconds: number | null = null,
): Promise<Result<null>> => {
  if (!element.isConnected) return failed(problem('viewGone'))
  const context = canvas.getContext('2d')
  if (!context) return failed(problem('pictureTooLarge'))
  try {
    const pxPerCssPx = canvas.width / pictureSize(element).widthPx
    const faces = await facesInUse()
    const view = copyView(element)
    drawUnder(context, view, pxPerCssPx, wheelSeconds)
    const over = await imageOf(drawingOf(view, faces, pxPerCssPx))
    context.setTransform(1, 0, 0, 1, 0, 0)
    context.drawImage(over, 0, 0)
    return ok(null)
  } catch {
    return failed(problem('pictureFailed'))
  }
}

/** A canvas for a view's picture of this width, its height in the view's proportion. */
export const canvasFor = (element: HTMLElement, widthPx: number, even = false): HTMLCanvasElement => {
  const size = pictureSize(element)
  const whole = (px: number): number => (even ? 2 * Math.round(px / 2) : Math.round(px))
  const canvas = document.createElement('canvas')
  canvas.width = whole(widthPx)
  canvas.height = whole((widthPx * size.heightPx) / size.widthPx)
  return canvas
}

/** @returns a view as a PNG file of this width */
export const pngOf = async (element: HTMLElement, widthPx: number): Promise<Result<Blob>> => {
  const canvas = canvasFor(element, widthPx)
  const drawn = await drawPicture(canvas, element)
  if (!drawn.ok) return drawn
  const png = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'))
  return png ? ok(png) : failed(problem('pictureTooLarge'))
}
