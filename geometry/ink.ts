/** A node has lost its ink when it has lost more than this (mm): a layer of marker is a fraction of a micrometre thick. */
export const INK_THICKNESS_MM = 3e-4

interface InkedField {
  readonly acrossCount: number
  readonly throughCount: number
  readonly vMm: Float64Array
  readonly vStartMm: Float64Array
}

const weight = (at: number, count: number): number => (at === 0 || at === count - 1 ? 0.5 : 1)

/** Share of some columns that still carries ink, 0 to 1; the field's end nodes count half, as everywhere in it. */
const shareOfColumns = (
  { acrossCount, throughCount, vMm, vStartMm }: InkedField,
  first: number,
  last: number,
): number => {
  let [inked, all] = [0, 0]
  for (let i = first, at = first * throughCount; i <= last; i++) {
    const across = weight(i, acrossCount)
    for (let j = 0; j < throughCount; j++, at++) {
      const here = across * weight(j, throughCount)
      const lost = (vMm[at] as number) - (vStartMm[at] as number)
      all += here
      if (lost <= INK_THICKNESS_MM) inked += here
    }
  }
  return inked / all
}

/** Share of the bevel that still carries ink, 0 to 1. */
export const inkLeftShare = (field: InkedField): number => shareOfColumns(field, 0, field.acrossCount - 1)

/** Share of the left third of the bevel, of the middle one and of the right one that still carries ink, each 0 to 1. */
export const inkLeftByThird = (field: InkedField): readonly [left: number, middle: number, right: number] => {
  const last = field.acrossCount - 1
  const [one, two] = [Math.round(last / 3), Math.round((2 * last) / 3)]
  return [shareOfColumns(field, 0, one), shareOfColumns(field, one, two), shareOfColumns(field, two, last)]
}
