import { useEffect, useState } from 'react'
import type { Tool } from '../../../main/contract/entities.ts'
import type { NamedLoan } from '../../../main/contract/errand.ts'
import { useApp } from '../../app/store.ts'
import { call } from '../../app/transport.ts'
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
  const [loans, setLoans] = useState<readonly NamedLoan[] | null>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: a change is the trigger
  useEffect(() => {
    let wanted = true
    void call('loan.list', { toolId }).then((listed) => {
      if (wanted && listed.ok) setLoans(listed.value)
    })
    return () => {
      wanted = false
    }
  }, [toolId, changes])
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
