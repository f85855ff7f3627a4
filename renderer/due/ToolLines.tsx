import type { ToolLine } from '../../main/contract/entities.ts'
import type { Found } from '../../main/contract/finding.ts'
import { go } from '../app/route.ts'
import { takeTool } from '../app/storeJob.ts'
import { useTexts } from '../ui/texts.tsx'

interface ToolLinesProps {
  readonly found: Found
  /** What is said of each. */
  readonly words: (tool: ToolLine) => string
}

const open = (tool: ToolLine): void => {
  takeTool(tool)
  go('rack', tool.code)
}

/** Tools, one a line, each opened on the rack by its name. */
export const ToolLines = ({ found: { tools, total }, words }: ToolLinesProps) => {
  const t = useTexts()
  return (
    <>
      <ul className="due-lines">
        {tools.map((tool) => (
          <li key={tool.id}>
            <span className="due-code">{tool.code}</span>
            <button type="button" className="word" onClick={() => open(tool)}>
              {tool.name}
            </button>
            <span>{words(tool)}</span>
            <span className="muted">{[tool.place, tool.holder].filter(Boolean).join(', ')}</span>
          </li>
        ))}
      </ul>
      {total > tools.length && <p className="muted">{t('stocktake:andMore', { count: total - tools.length })}</p>}
    </>
  )
}
