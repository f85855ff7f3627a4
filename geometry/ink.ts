/** A node has lost its ink when it has lost more than this (mm): a layer of marker is a fraction of a micrometre thick. */
export const INK_THICKNESS_MM = 3e-4

interface InkedField {
  readonly acrossCount: number
  readonly throughCount: number
  readonly vMm: Float64Array
  readonly vStartMm: Float64Array
}

const weight = (at: number, count: number): number => (at === 0 || at === count - 1 ? 0.5 : 1)

/** Share of the bevel that still carries ink, 0 to 1; end nodes count half, as everywhere in the field. */
export const inkLeftShare = ({ acrossCount, throughCount, vMm, vStartMm }: InkedField): number => {
  let inked = 0
  for (let i = 0, at = 0; i < acrossCount; i++) {
    const across = weight(i, acrossCount)
    for (let j = 0; j < throughCount; j++, at++) {
      const lost = (vMm[at] as number) - (vStartMm[at] as number)
      if (lost <= INK_THICKNESS_MM) inked += across * weight(j, throughCount)
    }
  }
  return inked / ((acrossCount - 1) * (throughCount - 1))
}
