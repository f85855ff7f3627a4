import { useState } from 'react'
import type { Problem } from '../../../geometry/result.ts'
import { type TakeOut as Asked, inOutNouns, outForms, type tableNouns } from '../../../main/contract/inOut.ts'
import { handOverBlob } from '../../app/handOver.ts'
import { useApp } from '../../app/store.ts'
import { call } from '../../app/transport.ts'
import { SelectEntry } from '../../ui/Entry.tsx'
import { Problems } from '../../ui/Problems.tsx'
import { useTexts } from '../../ui/texts.tsx'

type What = 'rack' | 'thisTool' | (typeof tableNouns)[number]
type Form = Asked['form']

/** The forms that a choice can be written in: a table holds one noun, and only what has pictures needs a zip. */
const formsOf = (what: What): readonly Form[] => {
  if (what === 'rack' || what === 'thisTool') return outForms.filter((form) => form !== 'csv')
  return ['csv', 'json']
}

/** The rack, one noun of it, or the tool in hand, as a file. */
export const TakeOut = () => {
  const t = useTexts()
  const tool = useApp((app) => app.tool)
  const [what, setWhat] = useState<What>('rack')
  const [wanted, setWanted] = useState<Form>('bundle')
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [busy, setBusy] = useState(false)
  const forms = formsOf(what)
  const form = forms.includes(wanted) ? wanted : (forms[0] as Form)
  const make = async (): Promise<void> => {
    setBusy(true)
    const asked: Asked = what === 'thisTool' ? { what: 'tool', form, toolId: tool?.id } : { what, form }
    const made = await call('inOut.take', asked)
    setBusy(false)
    setProblems(made.ok ? [] : made.problems)
    if (made.ok) handOverBlob(made.value, 'inOut:out.made')
  }
  const choices = [
    { value: 'rack' as const, name: t('inOut:out.whole') },
    ...(tool
      ? [{ value: 'thisTool' as const, name: t('inOut:out.thisTool', { code: tool.code, name: tool.name }) }]
      : []),
    ...inOutNouns.filter((noun) => noun !== 'photo').map((noun) => ({ value: noun, name: t(`inOut:many.${noun}`) })),
  ]
  return (
    <section className="in-out-part" aria-label={t('inOut:out.heading')}>
      <h3>{t('inOut:out.heading')}</h3>
      <div className="in-out-row">
        <SelectEntry<What> name={t('inOut:out.what')} value={what} options={choices} onChange={setWhat} />
        <SelectEntry<Form>
          name={t('inOut:out.form')}
          value={form}
          options={forms.map((value) => ({ value, name: t(`inOut:out.forms.${value}`) }))}
          onChange={setWanted}
        />
        <button type="button" className="key" disabled={busy} onClick={() => void make()}>
          {t('inOut:out.make')}
        </button>
      </div>
      <p role="status">{busy ? t('inOut:out.making') : ''}</p>
      <Problems problems={problems} />
    </section>
  )
}
