import type { ReactNode } from 'react'
import { type Figure, joined } from '../../main/contract/figures.ts'

/** Sizes of figures: read from two metres, from one, or at hand. */
export type FigureSize = 'far' | 'large' | 'medium' | 'small'

interface FigureTextProps {
  readonly figure: Figure
  readonly name: ReactNode
  readonly size?: FigureSize
  /** The one answer of a result: a solid block. */
  readonly found?: boolean
  readonly note?: ReactNode
}

/** A figure to read: large figure, small unit, name below. */
export const FigureText = ({ figure, name, size = 'medium', found = false, note }: FigureTextProps) => (
  <div className="figure" data-size={size}>
    <span className={found ? 'figure-found' : 'figure-plain'}>
      <span aria-hidden="true">
        {figure.text}
        {figure.unit !== '' && <span className="figure-unit">{figure.unit}</span>}
      </span>
      <span className="unseen">{joined(figure)}</span>
    </span>
    <span className="figure-name">{name}</span>
    {note !== undefined && <span className="figure-note">{note}</span>}
  </div>
)
