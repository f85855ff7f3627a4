import { type KeyboardEvent, useId, useRef } from 'react'
import { placesAt } from '../../../main/contract/labelPlaces.ts'
import { type LabelSheet, paperOf, positionAt, positionCount } from '../../../main/contract/labelSheets.ts'
import { useTexts } from '../../ui/texts.tsx'

interface PreviewProps {
  readonly sheet: LabelSheet
  readonly first: number
  /** Codes of the labels to come, in their order. */
  readonly codes: readonly string[]
  readonly onFirst: (position: number) => void
}

/** Room for the drawn sheet (px). */
const ROOM = { widthPx: 300, heightPx: 420 } as const

/** The sheet drawn to scale, each label a choice: those before the chosen one are gone, those after it are filled with what is to come. */
export const Preview = ({ sheet, first, codes, onFirst }: PreviewProps) => {
  const t = useTexts()
  const name = useId()
  const paper = useRef<HTMLDivElement>(null)
  const { widthMm, heightMm } = paperOf(sheet)
  const scale = Math.min(ROOM.widthPx / widthMm, ROOM.heightPx / heightMm)
  const count = positionCount(sheet)
  const key = (event: KeyboardEvent) => {
    const down = { ArrowDown: sheet.columns, ArrowUp: -sheet.columns }[event.key]
    if (down === undefined) return
    event.preventDefault()
    const position = first + down
    if (position < 1 || position > count) return
    onFirst(position)
    paper.current?.querySelectorAll('input')[position - 1]?.focus()
  }
  return (
    <fieldset className="labels-preview" onKeyDown={key}>
      <legend className="options-legend">{t('labels:first.legend')}</legend>
      {count > 1 && <p className="muted">{t('labels:first.how')}</p>}
      <div
        ref={paper}
        className="labels-paper"
        data-look="print"
        style={{ width: widthMm * scale, height: heightMm * scale }}
      >
        {Array.from({ length: count }, (_, i) => {
          const position = i + 1
          const box = positionAt(sheet, position)
          const code = position >= first ? codes[position - first] : undefined
          const state = position < first ? 'gone' : code === undefined ? 'free' : 'filled'
          const place = { position, row: Math.floor(i / sheet.columns) + 1, column: (i % sheet.columns) + 1 }
          return (
            <label
              key={position}
              data-state={state}
              style={{
                left: box.xMm * scale,
                top: box.yMm * scale,
                width: box.widthMm * scale,
                height: box.heightMm * scale,
              }}
            >
              <input
                type="radio"
                name={name}
                checked={position === first}
                aria-label={t('labels:first.position', place)}
                onChange={() => onFirst(position)}
              />
              {code !== undefined && <Drawn sheet={sheet} position={position} code={code} />}
            </label>
          )
        })}
      </div>
    </fieldset>
  )
}

interface DrawnProps {
  readonly sheet: LabelSheet
  readonly position: number
  readonly code: string
}

/** A label as it will be, its code a plain square. */
const Drawn = ({ sheet, position, code }: DrawnProps) => {
  const label = positionAt(sheet, position)
  const { code: square, words } = placesAt(sheet, position)
  const sizeMm = Math.min(words.heightMm * 0.6, (words.widthMm / Math.max(2, code.length)) * 1.6)
  return (
    <svg viewBox={`${label.xMm} ${label.yMm} ${label.widthMm} ${label.heightMm}`} aria-hidden="true">
      <rect x={square.xMm} y={square.yMm} width={square.widthMm} height={square.heightMm} />
      <text x={words.xMm} y={words.yMm + sizeMm * 0.8} fontSize={Math.max(0, sizeMm)}>
        {code}
      </text>
    </svg>
  )
}
