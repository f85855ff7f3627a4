/** The first column of the blade that touches the wheel; -1 where none does. */
export const firstTouching = (pressureNPerMm: ArrayLike<number>): number => {
  for (let i = 0; i < pressureNPerMm.length; i++) if ((pressureNPerMm[i] as number) > 0) return i
  return -1
}

/** The last one; -1 where none does. */
export const lastTouching = (pressureNPerMm: ArrayLike<number>): number => {
  let i = pressureNPerMm.length - 1
  while (i >= 0 && (pressureNPerMm[i] as number) <= 0) i--
  return i
}

/** Which columns of the blade touch the wheel, first and last; null where none does. */
export const touchingColumns = (pressureNPerMm: ArrayLike<number>): readonly [first: number, last: number] | null => {
  const first = firstTouching(pressureNPerMm)
  return first < 0 ? null : [first, lastTouching(pressureNPerMm)]
}

/** The highest of a row. */
export const highest = (row: ArrayLike<number>): number => {
  let most = 0
  for (let i = 0; i < row.length; i++) most = Math.max(most, row[i] as number)
  return most
}
