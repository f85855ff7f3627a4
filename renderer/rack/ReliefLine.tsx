/** Length of the line (px); the wanted relief stands at its end. */
const LONG_PX = 36
const HIGH_PX = 14
/** Measured relief beyond the wanted one is drawn no further out than this, as a share of the line. */
const MOST_SHARE = 1.15
const PX = { mark: 3, margin: 6 }

interface ReliefLineProps {
  readonly wantedMm: number
  /** Null: never measured. */
  readonly measuredMm: number | null
}

/** How far the relief last measured is on its way to the wanted one: a square on a line that ends in a diamond. The figures beside it and the tool's log say it in words. */
export const ReliefLine = ({ wantedMm, measuredMm }: ReliefLineProps) => {
  if (wantedMm === 0) return null
  const mid = HIGH_PX / 2
  const end = PX.margin + LONG_PX
  const at = measuredMm === null ? null : PX.margin + LONG_PX * Math.min(measuredMm / wantedMm, MOST_SHARE)
  return (
    <svg className="relief-line" width={end + 2 * PX.margin} height={HIGH_PX} aria-hidden="true">
      <path className="relief-way" d={`M${PX.margin} ${mid}H${end}`} />
      <path className="relief-wanted" d={`M${end - 4} ${mid}l4 -4l4 4l-4 4Z`} />
      {at !== null && (
        <rect className="relief-now" x={at - PX.mark} y={mid - PX.mark} width={2 * PX.mark} height={2 * PX.mark} />
      )}
    </svg>
  )
}
