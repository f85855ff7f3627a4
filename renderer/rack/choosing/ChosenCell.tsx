import type { Tool } from '../../../main/contract/entities.ts'
import { useTexts } from '../../ui/texts.tsx'
import { toggleChosen } from './chosen.ts'

interface ChosenCellProps {
  /** Null: not read yet. */
  readonly tool: Tool | null
  readonly chosen: boolean
}

/** The box of a row that says whether its tool is chosen; the row's own keys tick it, too. */
export const ChosenCell = ({ tool, chosen }: ChosenCellProps) => {
  const t = useTexts()
  return (
    <td data-column="choose">
      {tool && (
        <input
          type="checkbox"
          tabIndex={-1}
          checked={chosen}
          aria-label={t('many:choose', { code: tool.code, name: tool.name })}
          onClick={(event) => event.stopPropagation()}
          onChange={() => toggleChosen(tool.id)}
        />
      )}
    </td>
  )
}
