import type { ToolLine } from '../../main/contract/entities.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { allColumns, type ColumnName } from './columns.tsx'

interface ToolCellsProps {
  readonly tool: ToolLine
  readonly columns: readonly ColumnName[]
}

/** What the list says of one tool. */
export const ToolCells = ({ tool, columns }: ToolCellsProps) => {
  const t = useTexts()
  const figures = useFigures()
  return columns.map((name) => (
    <td key={name} data-column={name}>
      {allColumns[name].cell(tool, t, figures)}
    </td>
  ))
}
