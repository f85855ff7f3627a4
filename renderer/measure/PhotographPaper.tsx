import { type KeyboardEvent, type PointerEvent, useEffect, useRef } from 'react'
import type { PicturePoint, TraceMarks } from '../../geometry/traceEdge.ts'
import { useTexts } from '../ui/texts.tsx'
import { useBox } from '../ui/useBox.ts'
import { useWindowHeight } from '../ui/useWindowHeight.ts'

interface PhotographPaperProps {
  readonly picture: ImageBitmap
  readonly marks: TraceMarks
  readonly line: readonly PicturePoint[]
  readonly onChange: (patch: Partial<Pick<TraceMarks, 'left' | 'right'>>) => void
}

const BEFORE = { widthPx: 900, heightPx: 500 }
/** The picture takes at most this share of the window's height, so that the keys stay in sight. */
const HEIGHT_SHARE = 0.56
const LOUPE_PX = 132
const LOUPE_FACTOR = 3
const ARROW_PX = 1
const SHIFT_PX = 10
type Corner = 'left' | 'right'

/** The photograph with its two corners to be marked, by pointer or by arrow keys, and the line that was found. */
export const PhotographPaper = ({ picture, marks, line, onChange }: PhotographPaperProps) => {
  const t = useTexts()
  const paper = useRef<HTMLDivElement>(null)
  const canvas = useRef<HTMLCanvasElement>(null)
  const roomPx = useBox(paper, BEFORE).widthPx
  const mostPx = (useWindowHeight() * HEIGHT_SHARE * picture.width) / picture.height
  const widthPx = Math.round(Math.min(roomPx, mostPx))
  const scale = widthPx / picture.width
  const heightPx = Math.round(picture.height * scale)
  useEffect(() => {
    const drawing = canvas.current?.getContext('2d')
    drawing?.drawImage(picture, 0, 0, widthPx, heightPx)
  }, [picture, widthPx, heightPx])
  const inside = ([x, y]: PicturePoint): PicturePoint => [
    Math.min(picture.width - 1, Math.max(0, x)),
    Math.min(picture.height - 1, Math.max(0, y)),
  ]
  const move = (corner: Corner, to: PicturePoint) => onChange({ [corner]: inside(to) })
  const at = ([x, y]: PicturePoint): PicturePoint => [x * scale, y * scale]
  const [left, right] = [at(marks.left), at(marks.right)]
  return (
    <div className="photograph-paper" ref={paper} style={{ height: heightPx }}>
      <canvas ref={canvas} width={widthPx} height={heightPx} role="img" aria-label={t('measure:photograph.picture')} />
      <svg width={widthPx} height={heightPx} aria-hidden="true">
        <path className="photograph-chord" d={`M${left.join(' ')}L${right.join(' ')}`} />
        {line.length > 1 && (
          <path
            className="photograph-line"
            d={`M${line
              .map((point) =>
                at(point)
                  .map((px) => px.toFixed(1))
                  .join(' '),
              )
              .join('L')}`}
          />
        )}
      </svg>
      {(['left', 'right'] as const).map((corner) => (
        <Handle
          key={corner}
          corner={corner}
          picture={picture}
          at={marks[corner]}
          scale={scale}
          onMove={(to) => move(corner, to)}
        />
      ))}
    </div>
  )
}

interface HandleProps {
  readonly corner: Corner
  readonly picture: ImageBitmap
  readonly at: PicturePoint
  readonly scale: number
  readonly onMove: (to: PicturePoint) => void
}

const arrows: Readonly<Record<string, PicturePoint>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

/** A corner's mark: dragged, or moved by arrow keys a pixel of the photograph at a time; a loupe shows what lies under it. */
const Handle = ({ corner, picture, at, scale, onMove }: HandleProps) => {
  const t = useTexts()
  const key = (event: KeyboardEvent) => {
    const arrow = arrows[event.key]
    if (!arrow) return
    event.preventDefault()
    const step = event.shiftKey ? SHIFT_PX : ARROW_PX
    onMove([at[0] + arrow[0] * step, at[1] + arrow[1] * step])
  }
  const drag = (event: PointerEvent<HTMLButtonElement>) => {
    if (!event.currentTarget.hasPointerCapture(event.pointerId)) return
    const box = event.currentTarget.parentElement?.getBoundingClientRect()
    if (box) onMove([(event.clientX - box.left) / scale, (event.clientY - box.top) / scale])
  }
  return (
    <button
      type="button"
      className="photograph-handle"
      data-corner={corner}
      style={{ left: at[0] * scale, top: at[1] * scale }}
      aria-label={t(`measure:photograph.corner.${corner}`, { x: Math.round(at[0]), y: Math.round(at[1]) })}
      onKeyDown={key}
      onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
      onPointerMove={drag}
    >
      <Loupe picture={picture} at={at} />
    </button>
  )
}

const Loupe = ({ picture, at: [x, y] }: Pick<HandleProps, 'picture' | 'at'>) => {
  const glass = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    const drawing = glass.current?.getContext('2d')
    if (!drawing) return
    const across = LOUPE_PX / LOUPE_FACTOR
    drawing.clearRect(0, 0, LOUPE_PX, LOUPE_PX)
    drawing.drawImage(picture, x - across / 2, y - across / 2, across, across, 0, 0, LOUPE_PX, LOUPE_PX)
    drawing.strokeRect(LOUPE_PX / 2 - 4, LOUPE_PX / 2 - 4, 8, 8)
  }, [picture, x, y])
  return <canvas ref={glass} className="photograph-loupe" width={LOUPE_PX} height={LOUPE_PX} />
}
