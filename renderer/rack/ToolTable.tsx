import { type KeyboardEvent, memo, useEffect, useRef } from 'react'
import type { Tool } from '../../main/contract/entities.ts'
import { useApp } from '../app/store.ts'
import { useTexts } from '../ui/texts.tsx'
import { ChosenCell } from './choosing/ChosenCell.tsx'
import { useChoosing } from './choosing/useChoosing.ts'
import { allColumns, type ColumnName, columnsOf } from './columns.tsx'
import { sortBy, useFinding } from './finding.ts'
import { ToolCells } from './ToolCells.tsx'
import './toolTable.css'
import type { FoundTools, Rows } from './useFound.ts'
import { useInSight } from './useInSight.ts'

interface ToolTableProps {
  readonly rows: Rows
  readonly see: FoundTools['see']
  readonly held: Tool | null
  readonly onChoose: (tool: Tool) => void
  readonly onPlan: (tool: Tool) => void
}

/** Rows that Page Up and Page Down go by. */
const PAGE_ROWS = 15

const keyMoves: Record<string, (row: number, last: number) => number> = {
  ArrowDown: (row, last) => Math.min(row + 1, last),
  ArrowUp: (row) => Math.max(row - 1, 0),
  PageDown: (row, last) => Math.min(row + PAGE_ROWS, last),
  PageUp: (row) => Math.max(row - PAGE_ROWS, 0),
  Home: () => 0,
  End: (_row, last) => last,
}

/** The tools, one a row. Arrow keys go from row to row and take the tool in hand; Enter plans it. */
export const ToolTable = memo(({ rows, see, held, onChoose, onPlan }: ToolTableProps) => {
  const t = useTexts()
  const body = useRef<HTMLTableSectionElement>(null)
  const choosing = useChoosing(rows)
  const columns = columnsOf(useApp((app) => app.settings.columns))
  /** Room of all columns. */
  const across = columns.length + (choosing.on ? 1 : 0)
  /** The row that a key asked for, until it is there to be taken in hand. */
  const asked = useRef<number | null>(null)
  /** The row that is to have the focus, until it is drawn. */
  const focus = useRef<number | null>(null)
  const { scroll, first, last, aboveRows, belowRows, bring, many } = useInSight(rows, see)
  const rowAt = (row: number) => body.current?.querySelector<HTMLElement>(`[data-row="${row}"]`)
  const takeFocus = () => {
    const row = focus.current === null ? null : rowAt(focus.current)
    if (!row) return
    row.focus()
    focus.current = null
  }
  // A row that was out of sight is drawn only after the list was scrolled to it.
  useEffect(takeFocus)
  const take = (row: number) => {
    const tool = rows.at.get(row)
    asked.current = tool ? null : row
    bring(row)
    if (!tool) return see(row, row)
    focus.current = row
    onChoose(tool)
    takeFocus()
  }
  const key = (event: KeyboardEvent, row: number) => {
    if (choosing.key(event, row)) return
    const tool = rows.at.get(row)
    if (event.key === 'Enter' && tool) return onPlan(tool)
    const next = keyMoves[event.key]?.(row, rows.total - 1)
    if (next === undefined) return
    event.preventDefault()
    take(next)
  }
  // biome-ignore lint/correctness/useExhaustiveDependencies: rows that have come are the trigger
  useEffect(() => {
    if (asked.current !== null && rows.at.has(asked.current)) take(asked.current)
  }, [rows])
  // A tool taken in hand elsewhere, or just added, is shown.
  const heldId = held?.id
  useEffect(() => {
    if (heldId) body.current?.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: 'nearest' })
  }, [heldId])
  if (rows.total === 0) return <p className="rack-none">{t('rack:noneFound')}</p>
  const shown = Array.from({ length: last - first + 1 }, (_, k) => first + k)
  const heldRow = shown.find((row) => rows.at.get(row)?.id === heldId)
  return (
    <div className={`rack-scroll${many ? ' rack-many' : ''}${choosing.on ? ' choosing' : ''}`} ref={scroll}>
      {/* biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: rows are gone through by arrow keys, as in a grid */}
      <table className="tools" role="grid" aria-label={t('rack:list')} aria-rowcount={rows.total + 1}>
        <TableHead choosing={choosing.on} columns={columns} />
        <tbody ref={body}>
          <Spacer rows={aboveRows} across={across} />
          {shown.map((row) => {
            const tool = rows.at.get(row)
            return (
              <tr
                key={tool?.id ?? row}
                data-row={row}
                aria-rowindex={row + 2}
                tabIndex={row === (heldRow ?? first) ? 0 : -1}
                aria-selected={tool !== undefined && tool.id === heldId}
                onClick={(event) => tool && !choosing.click(event, row) && onChoose(tool)}
                onDoubleClick={() => tool && onPlan(tool)}
                onKeyDown={(event) => key(event, row)}
              >
                {choosing.on && (
                  <ChosenCell tool={tool ?? null} chosen={tool !== undefined && choosing.isChosen(tool.id)} />
                )}
                {tool ? <ToolCells tool={tool} columns={columns} /> : <NotYet across={columns.length} />}
              </tr>
            )
          })}
          <Spacer rows={belowRows} across={across} />
        </tbody>
      </table>
    </div>
  )
})

interface TableHeadProps {
  readonly choosing: boolean
  readonly columns: readonly ColumnName[]
}

const TableHead = ({ choosing, columns }: TableHeadProps) => {
  const t = useTexts()
  const sort = useFinding((finding) => finding.sort)
  const descending = useFinding((finding) => finding.descending)
  return (
    <thead>
      <tr aria-rowindex={1}>
        {choosing && <td data-column="choose" />}
        {columns.map((column) => {
          const by = allColumns[column].sort
          return (
            <th
              key={column}
              scope="col"
              data-column={column}
              aria-sort={sort === by ? (descending ? 'descending' : 'ascending') : undefined}
            >
              <button type="button" className="word" onClick={() => sortBy(by)}>
                {t(`rack:column.${column}`)}
              </button>
            </th>
          )
        })}
      </tr>
    </thead>
  )
}

/** A row that is still being read. */
const NotYet = ({ across }: { readonly across: number }) => {
  const t = useTexts()
  return (
    <td colSpan={across} className="muted">
      {t('rack:reading')}
    </td>
  )
}

/** Room of the rows that are out of sight. */
const Spacer = ({ rows, across }: { readonly rows: number; readonly across: number }) =>
  rows === 0 ? null : (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: an empty row takes no focus
    <tr aria-hidden="true" className="out-of-sight">
      <td colSpan={across} style={{ '--rows': rows } as object} />
    </tr>
  )
