/** Which columns of the blade touch the wheel, first and last; null where none does. */
export const touchingColumns = (pressureNPerMm: ArrayLike<number>): readonly [first: number, last: number] | null => {
  let first = -1
  let last = -1
  for (let i = 0; i < pressureNPerMm.length; i++) {
    if ((pressureNPerMm[i] as number) <= 0) continue
    if (first < 0) first = i
    last = i
  }
  return first < 0 ? null : [first, last]
}

/** The highest of a row. */
export const highest = (row: ArrayLike<number>): number => {
  let most = 0
  for (let i = 0; i < row.length; i++) most = Math.max(most, row[i] as number)
  return most
}
