import type { ToolLine } from '../../main/contract/entities.ts'
import { shortDate } from '../ui/dates.ts'
import { useTexts } from '../ui/texts.tsx'

/** Where a tool belongs and who has it. */
export const Whereabouts = ({ tool }: { readonly tool: ToolLine }) => (
  <>
    {[tool.place, tool.holder].filter(Boolean).join(', ')} <Back tool={tool} />
  </>
)

/** When it is wanted back; marked once the day has passed. */
const Back = ({ tool: { dueBack } }: { readonly tool: ToolLine }) => {
  const t = useTexts()
  if (dueBack === null) return null
  const late = dueBack < new Date().toISOString().slice(0, 10)
  return (
    <span className={late ? 'late' : 'muted'}>
      {t(late ? 'rack:back.late' : 'rack:back.by', { day: shortDate(dueBack) })}
    </span>
  )
}
