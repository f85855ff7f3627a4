import type { Result } from '../../../geometry/result.ts'
import { ok } from '../../../geometry/result.ts'
import { decoded } from '../../ui/picture.ts'

/** Longest side that a picture is kept with (px): an iron fills a large screen with it. */
const LONGEST_PX = 2000
/** Share of the quality that JPEG keeps: nobody sees the difference, and the file is a tenth. */
const QUALITY = 0.85

/** A picture as it is handed in. */
export interface SmallerPicture {
  readonly file: Blob
  readonly widthPx: number
  readonly heightPx: number
}

/** Draws a picture anew, no larger than it needs to be; where and with what it was taken does not come with it. */
export const smaller = async (file: File): Promise<Result<SmallerPicture>> => {
  const picture = await decoded(file)
  if (!picture.ok) return picture
  const { width, height } = picture.value
  const scale = Math.min(1, LONGEST_PX / Math.max(width, height))
  const [widthPx, heightPx] = [Math.max(1, Math.round(width * scale)), Math.max(1, Math.round(height * scale))]
  const canvas = new OffscreenCanvas(widthPx, heightPx)
  canvas.getContext('2d')?.drawImage(picture.value, 0, 0, widthPx, heightPx)
  picture.value.close()
  return ok({ file: await canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY }), widthPx, heightPx })
}
