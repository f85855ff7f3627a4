/** How a canvas is to draw itself once more, for a file. */
export interface Finer {
  /** Pixels for each CSS pixel. */
  readonly pxPerCssPx: number
  /** How long the wheel has turned (s); null: it stands as it is. */
  readonly wheelSeconds: number | null
}

/** Draws at another fineness and hands the drawn canvas over while it holds; then all is as before. */
type DrawFiner = (how: Finer, use: (drawn: HTMLCanvasElement) => void) => void

const able = new WeakMap<HTMLCanvasElement, DrawFiner>()

/** Makes a canvas known as one that can be drawn finer than it stands. @returns a function that ends that */
export const offerFiner = (canvas: HTMLCanvasElement, draw: DrawFiner): (() => void) => {
  able.set(canvas, draw)
  return () => void able.delete(canvas)
}

/** Draws a canvas as finely as it can be had; one that cannot do better is handed over as it stands. */
export const drawFiner = (canvas: HTMLCanvasElement, how: Finer, use: (drawn: HTMLCanvasElement) => void): void => {
  const draw = able.get(canvas)
  if (draw) draw(how, use)
  else use(canvas)
}
