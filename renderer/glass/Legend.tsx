import { Square } from './Glass.tsx'

/** A stretch of each line, as the drawing shows it, for the legend beside it. */
export const WantedKey = () => (
  <svg width="36" height="12" aria-hidden="true">
    <path className="wanted-line" d="M0 6h36" />
    <path className="diamond" d="M18 1l5 5l-5 5l-5 -5Z" />
  </svg>
)

export const PredictedKey = () => (
  <svg width="36" height="12" aria-hidden="true">
    <path className="predicted-line" d="M0 6h36" />
  </svg>
)

/** The line through places measured, without them. */
export const LineKey = () => (
  <svg width="36" height="12" aria-hidden="true">
    <path className="measured-line" d="M0 6h36" />
  </svg>
)

export const MeasuredKey = () => (
  <svg width="36" height="16" aria-hidden="true">
    <Square xPx={18} yPx={5} toPx={15} />
  </svg>
)
