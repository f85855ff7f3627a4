/** What may be read from: a video as it runs, or a picture. */
export interface Readable {
  readonly source: CanvasImageSource
  readonly widthPx: number
  readonly heightPx: number
}

/** Pictures are read in these sizes (pixels on the longer side), small first: a code that fills a large picture is found sooner in a small one. */
const PICTURE_SIZES_PX = [640, 1280, 2560] as const
/** The square of a camera's picture that is read, over its shorter side. */
export const SQUARE_SHARE = 0.8

/** The reader is read itself only when something is to be read (35 kB). */
const loadReader = async () => (await import('qr/decode.js')).default

const paperOf = (widthPx: number, heightPx: number) => {
  const canvas = new OffscreenCanvas(Math.max(1, Math.round(widthPx)), Math.max(1, Math.round(heightPx)))
  return { canvas, paper: canvas.getContext('2d', { willReadFrequently: true }) }
}

type Reader = Awaited<ReturnType<typeof loadReader>>

const readPaper = (decode: Reader, { canvas, paper }: ReturnType<typeof paperOf>): string | null => {
  if (!paper) return null
  try {
    return decode(paper.getImageData(0, 0, canvas.width, canvas.height))
  } catch {
    // The library throws where there is no code, which is how most pictures are.
    return null
  }
}

/** @returns what the code in the middle of a camera's picture says, or null where none is found */
export const readCamera = async ({ source, widthPx, heightPx }: Readable): Promise<string | null> => {
  const decode = await loadReader()
  const sidePx = SQUARE_SHARE * Math.min(widthPx, heightPx)
  const sheet = paperOf(sidePx, sidePx)
  const [left, top] = [(widthPx - sidePx) / 2, (heightPx - sidePx) / 2]
  sheet.paper?.drawImage(source, left, top, sidePx, sidePx, 0, 0, sheet.canvas.width, sheet.canvas.height)
  return readPaper(decode, sheet)
}

/** @returns what a code anywhere in a picture says, or null where none is found */
export const readPicture = async ({ source, widthPx, heightPx }: Readable): Promise<string | null> => {
  const decode = await loadReader()
  for (const sizePx of PICTURE_SIZES_PX) {
    const scale = Math.min(1, sizePx / Math.max(widthPx, heightPx))
    const sheet = paperOf(widthPx * scale, heightPx * scale)
    // White behind a picture that has no ground of its own.
    if (sheet.paper) sheet.paper.fillStyle = '#fff'
    sheet.paper?.fillRect(0, 0, sheet.canvas.width, sheet.canvas.height)
    sheet.paper?.drawImage(source, 0, 0, sheet.canvas.width, sheet.canvas.height)
    const text = readPaper(decode, sheet)
    if (text !== null || scale === 1) return text
  }
  return null
}
