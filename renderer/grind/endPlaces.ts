/** Least distance between two lines of text (px). */
export const LINE_PX = 20
/** The bar of the depth scale ends above the first line of text that has this base (px). */
const BAR_FOOT_PX = 84
/** The last line's base stands this far above the foot of the view (px). */
const FOOT_PX = 4

/**
 * Bases of the names at the right ends of two curves (px from the top), clear of each other and of the scale above them. The
 * wanted one carries its figure on a second line.
 * @param wantedYPx null: nothing is wanted
 * @param linePx distance of two lines, where text has another size
 */
export const endPlaces = (
  nowYPx: number,
  wantedYPx: number | null,
  heightPx: number,
  linePx = LINE_PX,
): { readonly nowYPx: number; readonly wantedYPx: number } => {
  const lowest = heightPx - FOOT_PX
  const now = Math.min(Math.max(nowYPx, BAR_FOOT_PX), lowest)
  if (wantedYPx === null) return { nowYPx: now, wantedYPx: 0 }
  const wanted = Math.max(wantedYPx, BAR_FOOT_PX)
  const clear = now <= wanted - linePx || now >= wanted + 2 * linePx
  if (clear) return { nowYPx: now, wantedYPx: wanted }
  const [above, below] = [wanted - linePx, wanted + 2 * linePx]
  // In the curves' order where the scale pushes both down: no leader crosses a name.
  if (nowYPx <= wantedYPx && above < BAR_FOOT_PX && BAR_FOOT_PX + 2 * linePx <= lowest)
    return { nowYPx: BAR_FOOT_PX, wantedYPx: BAR_FOOT_PX + linePx }
  const goesAbove = above >= BAR_FOOT_PX && (now <= wanted || below > lowest)
  return { nowYPx: goesAbove ? above : below, wantedYPx: wanted }
}
