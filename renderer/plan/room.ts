/** Height of the window that everything on Plan but the drawings takes (px). */
const TAKEN_PX = 720
/** Least and most height of a curve (px): below, its shape is lost; above, it is no clearer. */
const LEAST_PX = 168
const MOST_PX = 320

/** @returns the height that a curve on Plan may take, so that the answer stays in sight */
export const curveRoomPx = (windowHeightPx: number): number =>
  Math.min(MOST_PX, Math.max(LEAST_PX, windowHeightPx - TAKEN_PX))
