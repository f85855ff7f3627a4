import { type ReactNode, useRef } from 'react'
import { textScale } from '../ui/textScale.ts'
import { useSize } from './useScreen.ts'
import './views.css'

/** Room right of every view for what stands outside it (px), where text has its usual size. */
export const OUTSIDE_PX = 100

interface ViewsProps {
  readonly children: (plotPx: number) => ReactNode
}

/** The column of magnified views: all share one width, so that a place across the blade lies on one line in all. */
export const Views = ({ children }: ViewsProps) => {
  const ref = useRef<HTMLDivElement>(null)
  const size = useSize(ref)
  return (
    <div className="grind-views" ref={ref}>
      {size && children(Math.max(size.widthPx - OUTSIDE_PX * textScale(), 120))}
    </div>
  )
}

interface ViewHeadProps {
  readonly heading: string
  readonly note: ReactNode
  readonly end?: ReactNode
  /** Keys of the view. */
  readonly children?: ReactNode
}

/** Heading of a view, with its factor. */
export const ViewHead = ({ heading, note, end, children }: ViewHeadProps) => (
  <div className="grind-view-head">
    <h2>{heading}</h2>
    <span className="grind-view-note">{note}</span>
    {end !== undefined && <span className="grind-view-end">{end}</span>}
    {children}
  </div>
)

/** The five stations across: both corners, both halfway, the middle. */
export const Stations = ({ plotPx, heightPx }: { readonly plotPx: number; readonly heightPx: number }) => (
  <path
    className="grind-stations"
    d={[0, 0.25, 0.5, 0.75, 1].map((share) => `M${share * plotPx} 0V${heightPx}`).join('')}
  />
)
