/** A label in a column: where it would like to be and how much room it needs (px). */
export interface Wish {
  readonly wishPx: number
  readonly heightPx: number
}

/**
 * Upper edges of labels in one column, in the order given by their wishes: each as near its wish as the others and the
 * column's ends allow. Pushed down from the top, then up from the bottom; where there is no room they stand evenly.
 */
export const packLabels = (wishes: readonly Wish[], topPx: number, bottomPx: number, gapPx: number): number[] => {
  const order = wishes.map((_, i) => i).sort((a, b) => at(wishes, a).wishPx - at(wishes, b).wishPx)
  const places = new Array<number>(wishes.length).fill(0)
  let free = topPx
  for (const i of order) {
    places[i] = Math.max(at(wishes, i).wishPx - at(wishes, i).heightPx / 2, free)
    free = (places[i] as number) + at(wishes, i).heightPx + gapPx
  }
  let limit = bottomPx
  for (const i of order.toReversed()) {
    places[i] = Math.max(Math.min(places[i] as number, limit - at(wishes, i).heightPx), topPx)
    limit = (places[i] as number) - gapPx
  }
  return places
}

const at = (wishes: readonly Wish[], i: number): Wish => wishes[i] as Wish
