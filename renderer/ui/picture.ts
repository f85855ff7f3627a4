import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { GreyPicture, PicturePoint } from '../../geometry/traceEdge.ts'

/** Largest photograph taken (pixels): more than any camera at a bench gives. */
const MOST_PIXELS = 80_000_000

/** Decodes a picture file; nothing of it is kept beyond the window. */
export const decoded = async (file: File): Promise<Result<ImageBitmap>> => {
  try {
    const picture = await createImageBitmap(file)
    if (picture.width * picture.height <= MOST_PIXELS) return ok(picture)
    picture.close()
    return failed(problem('photographTooLarge', 'photograph', { most: MOST_PIXELS / 1_000_000 }))
  } catch {
    return failed(problem('photographUnreadable', 'photograph'))
  }
}

/** Part of a picture in grey, and where it begins. */
export interface GreyPart {
  readonly picture: GreyPicture
  readonly left: number
  readonly top: number
}

/** What Rec. 601 takes of red, green and blue for brightness, in 256ths. */
const [RED, GREEN, BLUE] = [77, 150, 29] as const

/** The part of a picture around two corners, in grey: all that a trace looks at. */
export const greyAround = (picture: ImageBitmap, [a, b]: readonly [PicturePoint, PicturePoint]): GreyPart => {
  const reach = Math.hypot(b[0] - a[0], b[1] - a[1]) * 0.1 + 24
  const left = Math.max(0, Math.floor(Math.min(a[0], b[0]) - reach))
  const top = Math.max(0, Math.floor(Math.min(a[1], b[1]) - reach))
  const widthPx = Math.min(picture.width, Math.ceil(Math.max(a[0], b[0]) + reach)) - left
  const heightPx = Math.min(picture.height, Math.ceil(Math.max(a[1], b[1]) + reach)) - top
  const canvas = new OffscreenCanvas(widthPx, heightPx)
  const paper = canvas.getContext('2d', { willReadFrequently: true })
  if (!paper) return { picture: { widthPx: 0, heightPx: 0, grey: new Uint8Array() }, left, top }
  paper.drawImage(picture, -left, -top)
  const { data } = paper.getImageData(0, 0, widthPx, heightPx)
  const grey = new Uint8Array(widthPx * heightPx)
  for (let i = 0, at = 0; i < grey.length; i++, at += 4)
    grey[i] = ((data[at] as number) * RED + (data[at + 1] as number) * GREEN + (data[at + 2] as number) * BLUE) >> 8
  return { picture: { widthPx, heightPx, grey }, left, top }
}
