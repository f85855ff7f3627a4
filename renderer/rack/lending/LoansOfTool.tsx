import { useState } from 'react'
import type { Tool } from '../../../main/contract/entities.ts'
import { useApp } from '../../app/store.ts'
import { useAnswer } from '../../app/useAnswer.ts'
import { shortDate } from '../../ui/dates.ts'
import { useTexts } from '../../ui/texts.tsx'

/** Who has had a tool, newest first; read when it is unfolded. */
export const LoansOfTool = ({ tool }: { readonly tool: Tool }) => {
  const t = useTexts()
  const [open, setOpen] = useState(false)
  return (
    <details className="detail-loans" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{t('rack:loans.heading')}</summary>
      {open && <Loans toolId={tool.id} />}
    </details>
  )
}

const Loans = ({ toolId }: { readonly toolId: string }) => {
  const t = useTexts()
  const changes = useApp((app) => app.rackChanges)
  const loans = useAnswer('loan.list', { toolId }, [changes])
  if (loans?.length === 0) return <p className="muted">{t('rack:loans.none')}</p>
  return (
    <ul>
      {loans?.map(({ id, person, lentAt, returnedAt }) => (
        <li key={id}>
          {returnedAt === null
            ? t('rack:loans.out', { person, from: shortDate(lentAt) })
            : t('rack:loans.over', { person, from: shortDate(lentAt), to: shortDate(returnedAt) })}
        </li>
      ))}
    </ul>
  )
}
