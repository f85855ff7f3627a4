import { useState } from 'react'
import type { Problem } from '../../../geometry/result.ts'
import type { CallInput } from '../../../main/contract/calls.ts'
import { handOverBlob } from '../../app/handOver.ts'
import { useApp } from '../../app/store.ts'
import { call } from '../../app/transport.ts'
import { useTexts } from '../../ui/texts.tsx'
import { OutPart } from './OutPart.tsx'

const forms = ['pdf', 'svg', 'dxf'] as const satisfies readonly CallInput<'template.make'>['form'][]

/** The wanted edge of the job in hand on paper, 1 : 1; a fault that is being shown changes nothing in it. */
export const TemplatePart = () => {
  const t = useTexts()
  const job = useApp((app) => app.job)
  const [predicted, setPredicted] = useState(false)
  const [busy, setBusy] = useState(false)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const make = async (form: (typeof forms)[number]) => {
    if (!job) return
    setBusy(true)
    const made = await call('template.make', { id: job.id, form, predicted })
    setBusy(false)
    setProblems(made.ok ? [] : made.problems)
    if (made.ok) handOverBlob(made.value, 'out:handedOver')
  }
  return (
    <OutPart heading={t('out:template.heading')} sentence={t('out:template.sentence')} problems={problems}>
      <label className="out-check">
        <input type="checkbox" checked={predicted} onChange={(event) => setPredicted(event.target.checked)} />
        {t('out:template.withPredicted')}
      </label>
      <div className="out-keys">
        {forms.map((form) => (
          <button key={form} type="button" className="key" disabled={busy || !job} onClick={() => void make(form)}>
            {t(`out:template.${form}`)}
          </button>
        ))}
      </div>
    </OutPart>
  )
}
