import { useState } from 'react'
import type { Tool } from '../../main/contract/entities.ts'
import { go } from '../app/route.ts'
import { sayProblem } from '../app/store.ts'
import { FigureText } from '../ui/FigureText.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { BenchLog } from './BenchLog.tsx'
import { removeTool } from './edits.ts'
import { IronDrawing } from './IronDrawing.tsx'
import { LifeLeft } from './LifeLeft.tsx'
import { openLabels } from './labels/useLabels.ts'
import { LoansOfTool } from './lending/LoansOfTool.tsx'
import { QuickKeys } from './lending/QuickKeys.tsx'
import { MoreOfTool } from './MoreOfTool.tsx'
import { Photos } from './photos/Photos.tsx'
import { HistorySheet } from './sheets.tsx'
import { ToolCurves } from './ToolCurves.tsx'
import './toolDetail.css'

interface ToolDetailProps {
  readonly tool: Tool
  readonly onEdit: () => void
  readonly onDuplicate: () => void
}

/** The tool in hand: its figures, its iron drawn to scale with the dot, its bench log. */
export const ToolDetail = ({ tool, onEdit, onDuplicate }: ToolDetailProps) => {
  const t = useTexts()
  const [history, setHistory] = useState(false)
  const remove = async () => {
    const removed = await removeTool(tool)
    if (!removed.ok && removed.problems[0]) sayProblem(removed.problems[0])
  }
  return (
    <div className="detail">
      <div className="detail-words">
        <p className="detail-code">{tool.code}</p>
        <h2>{tool.name}</h2>
        <p className="muted">{[t(`common:toolKind.${tool.kind}`), tool.steel].filter(Boolean).join(', ')}</p>
        {tool.note !== '' && <p>{tool.note}</p>}
        <p className="detail-keys">
          <button type="button" className="key key-main" onClick={() => go('plan', tool.code)}>
            {t('rack:plan')}
          </button>
          <button type="button" className="word" onClick={onEdit}>
            {t('rack:edit')}
          </button>
          <button type="button" className="word" onClick={onDuplicate}>
            {t('rack:duplicate')}
          </button>
          <button type="button" className="word" onClick={() => void remove()}>
            {t('rack:remove')}
          </button>
          <button type="button" className="word" onClick={() => setHistory(true)}>
            {t('history:open')}
          </button>
          <button type="button" className="word" onClick={() => openLabels([{ noun: 'tool', id: tool.id }])}>
            {t('labels:openOne')}
          </button>
        </p>
      </div>
      <QuickKeys tool={tool} />
      <DetailFigures tool={tool} />
      <IronDrawing tool={tool} />
      <ToolCurves tool={tool} />
      <MoreOfTool tool={tool} />
      <LifeLeft tool={tool} />
      <LoansOfTool tool={tool} />
      <Photos tool={tool} />
      <BenchLog tool={tool} />
      {history && <HistorySheet of={tool} onClose={() => setHistory(false)} />}
    </div>
  )
}

const DetailFigures = ({ tool }: { readonly tool: Tool }) => {
  const t = useTexts()
  const figures = useFigures()
  const { widthMm, thicknessMm, seatAngleDeg, bevelAngleDeg, honedBevelDeg, projectionMm, reliefMm } = tool
  const size = figures.of('blade.thicknessMm', thicknessMm)
  const both = { ...size, text: `${figures.of('blade.widthMm', widthMm).text} × ${size.text}` }
  const bevelName =
    honedBevelDeg === null
      ? t('rack:figure.bevel')
      : t('rack:figure.bevelHoned', { honed: figures.of('blade.honedBevelDeg', honedBevelDeg).text })
  const seat = seatAngleDeg === null ? { text: '–', unit: '' } : figures.of('blade.seatAngleDeg', seatAngleDeg)
  const seatName = t(seatAngleDeg === null ? 'rack:figure.noSeat' : `rack:figure.seat.${tool.bevelSide}`)
  return (
    <div className="detail-figures">
      <FigureText figure={both} name={t('rack:figure.size')} />
      <FigureText figure={seat} name={seatName} />
      <FigureText figure={figures.of('aim.bevelAngleDeg', bevelAngleDeg)} name={bevelName} />
      <FigureText figure={figures.of('aim.projectionMm', projectionMm)} name={t('rack:figure.projection')} />
      <FigureText figure={figures.of('aim.reliefMm', reliefMm)} name={t('rack:figure.relief')} />
    </div>
  )
}
