import { useState } from 'react'
import type { Result } from '../../geometry/result.ts'
import { type PicturePoint, type TracedEdge, type TraceMarks, traceEdge } from '../../geometry/traceEdge.ts'
import type { Tool } from '../../main/contract/entities.ts'
import { Options } from '../ui/Options.tsx'
import { Problems } from '../ui/Problems.tsx'
import { Sheet } from '../ui/Sheet.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import type { ProfileDraft } from './bench.ts'
import { PhotographPaper } from './PhotographPaper.tsx'
import './photograph.css'
import { greyAround } from '../ui/picture.ts'

interface PhotographProps {
  readonly tool: Tool
  readonly picture: ImageBitmap
  readonly name: string
  readonly onTake: (profile: ProfileDraft) => void
  readonly onClose: () => void
}

/** Corners start this far in from the picture's sides, as a share of its width, and a little below its middle. */
const IN_SHARE = 0.15
const DOWN_SHARE = 0.55

const traced = (picture: ImageBitmap, marks: TraceMarks): Result<TracedEdge> => {
  const part = greyAround(picture, [marks.left, marks.right])
  const moved = ([x, y]: PicturePoint): PicturePoint => [x - part.left, y - part.top]
  const found = traceEdge(part.picture, { ...marks, left: moved(marks.left), right: moved(marks.right) })
  if (!found.ok) return found
  const line = found.value.line.map(([x, y]): PicturePoint => [x + part.left, y + part.top])
  return { ok: true, value: { ...found.value, line } }
}

/** A photograph of the edge: mark both corners, look at the line that was found, take it or leave it. */
export const Photograph = ({ tool, picture, name, onTake, onClose }: PhotographProps) => {
  const t = useTexts()
  const [marks, setMarks] = useState<TraceMarks>({
    left: [picture.width * IN_SHARE, picture.height * DOWN_SHARE],
    right: [picture.width * (1 - IN_SHARE), picture.height * DOWN_SHARE],
    iron: 'below',
    widthMm: tool.widthMm,
  })
  const [found, setFound] = useState<Result<TracedEdge> | null>(null)
  const change = (patch: Partial<TraceMarks>) => {
    setMarks({ ...marks, ...patch })
    setFound(null)
  }
  const take = () => {
    if (!found?.ok) return
    onTake({ points: found.value.points, name })
    onClose()
  }
  return (
    <Sheet title={t('measure:photograph.title', { name })} onClose={onClose}>
      <div className="photograph">
        <p>{t('measure:photograph.how')}</p>
        <PhotographPaper picture={picture} marks={marks} line={found?.ok ? found.value.line : []} onChange={change} />
        <div className="photograph-keys">
          <Options
            legend={t('measure:photograph.iron')}
            options={(['below', 'above'] as const).map((value) => ({ value, name: t(`measure:photograph.${value}`) }))}
            value={marks.iron}
            onChoose={(iron) => change({ iron })}
          />
          <button type="button" className="key" onClick={() => setFound(traced(picture, marks))}>
            {t('measure:photograph.find')}
          </button>
          <button type="button" className="key key-main" disabled={!found?.ok} onClick={take}>
            {t('measure:profile.take')}
          </button>
        </div>
        <Said found={found} />
        <p className="muted">{t('measure:photograph.leftOut')}</p>
      </div>
    </Sheet>
  )
}

const Said = ({ found }: { readonly found: Result<TracedEdge> | null }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  if (found === null) return null
  if (!found.ok) return <Problems problems={found.problems} />
  const { points, dropped, columns, pixelMm } = found.value
  const most = points.reduce((a, { gapMm }) => Math.max(a, gapMm), 0)
  return (
    <p role="status">
      {t('measure:photograph.found', {
        most: inWords(most, 'mm', 2),
        pixel: inWords(pixelMm, 'mm', 3),
        columns,
        dropped,
      })}
    </p>
  )
}
