import encodeQr from 'qr'
import { rectangle } from './shapes.ts'
import type { Point } from './sheet.ts'

/**
 * The black and white squares of a code to be read by machine (QR, ISO/IEC 18004), rows from the top, true: black. A quarter of it
 * may be lost to a scratch or a thumb.
 */
const codeSquares = (text: string): readonly (readonly boolean[])[] => {
  // The library wants a clear margin of a square at least; pages give the code its own.
  const [, ...rows] = encodeQr(text.toWellFormed(), 'raw', { ecc: 'quartile', border: 1 })
  return rows.slice(0, -1).map((row) => row.slice(1, -1))
}

/** A code of a given side as black runs of each row, so that no hairlines show between its squares. */
export const codeRuns = (text: string, xMm: number, yMm: number, sideMm: number): readonly (readonly Point[])[] => {
  const squares = codeSquares(text)
  const squareMm = sideMm / squares.length
  const runs: (readonly Point[])[] = []
  squares.forEach((row, down) => {
    for (let start = 0; start < row.length; start += 1) {
      if (!row[start]) continue
      const white = row.indexOf(false, start)
      const end = white === -1 ? row.length : white
      const place = { xMm: xMm + start * squareMm, yMm: yMm + down * squareMm }
      runs.push(rectangle({ ...place, widthMm: (end - start) * squareMm, heightMm: squareMm }))
      start = end
    }
  })
  return runs
}
