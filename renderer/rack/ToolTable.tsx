import { type KeyboardEvent, useEffect, useRef } from 'react'
import type { Tool, ToolLine } from '../../main/contract/entities.ts'
import { IronMark } from '../ui/IronMark.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import './toolTable.css'

interface ToolTableProps {
  readonly tools: readonly ToolLine[]
  readonly held: Tool | null
  readonly onChoose: (tool: Tool) => void
  readonly onPlan: (tool: Tool) => void
}

const columns = ['code', 'tool', 'size', 'seat', 'bevel', 'projection', 'relief', 'where'] as const
const keyMoves: Record<string, (row: number, last: number) => number> = {
  ArrowDown: (row, last) => Math.min(row + 1, last),
  ArrowUp: (row) => Math.max(row - 1, 0),
  Home: () => 0,
  End: (_row, last) => last,
}

/** The tools, one a row. Arrow keys go from row to row and take the tool in hand; Enter plans it. */
export const ToolTable = ({ tools, held, onChoose, onPlan }: ToolTableProps) => {
  const t = useTexts()
  const body = useRef<HTMLTableSectionElement>(null)
  const key = (event: KeyboardEvent, row: number) => {
    const tool = tools[row]
    if (event.key === 'Enter' && tool) return onPlan(tool)
    const next = keyMoves[event.key]?.(row, tools.length - 1)
    const to = next === undefined ? undefined : tools[next]
    if (next === undefined || !to) return
    event.preventDefault()
    onChoose(to)
    body.current?.rows[next]?.focus()
  }
  const tabRow = Math.max(
    0,
    tools.findIndex(({ id }) => id === held?.id),
  )
  // A tool taken in hand elsewhere, or just added, is shown.
  const heldId = held?.id
  useEffect(() => {
    if (heldId) body.current?.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: 'nearest' })
  }, [heldId])
  if (tools.length === 0) return <p className="rack-none">{t('rack:noneFound')}</p>
  return (
    <div className="rack-scroll">
      {/* biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: rows are gone through by arrow keys, as in a grid */}
      <table className="tools" role="grid" aria-label={t('rack:list')}>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column} scope="col" data-column={column}>
                {t(`rack:column.${column}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody ref={body}>
          {tools.map((tool, row) => (
            <tr
              key={tool.id}
              tabIndex={row === tabRow ? 0 : -1}
              aria-selected={tool.id === held?.id}
              onClick={() => onChoose(tool)}
              onDoubleClick={() => onPlan(tool)}
              onKeyDown={(event) => key(event, row)}
            >
              <ToolCells tool={tool} />
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

const ToolCells = ({ tool }: { readonly tool: ToolLine }) => {
  const t = useTexts()
  const figures = useFigures()
  const { widthMm, thicknessMm, seatAngleDeg, bevelAngleDeg, projectionMm, reliefMm } = tool
  const size = `${figures.of('blade.widthMm', widthMm).text} × ${figures.of('blade.thicknessMm', thicknessMm).text}`
  const where = [tool.place, tool.holder].filter(Boolean).join(', ')
  return (
    <>
      <td data-column="code">
        <IronMark dot={tool.dotCorner} /> {tool.code}
      </td>
      <td data-column="tool">{tool.name}</td>
      <td data-column="size">{size}</td>
      <td data-column="seat">{seatAngleDeg === null ? '' : figures.of('blade.seatAngleDeg', seatAngleDeg).text}</td>
      <td data-column="bevel">{figures.of('aim.bevelAngleDeg', bevelAngleDeg).text}</td>
      <td data-column="projection">{figures.of('aim.projectionMm', projectionMm).text}</td>
      <td data-column="relief">{reliefMm === 0 ? t('rack:square') : figures.of('aim.reliefMm', reliefMm).text}</td>
      <td data-column="where">{where}</td>
    </>
  )
}
