import { useState } from 'react'
import type { Result } from '../../../geometry/result.ts'
import type { CallOutput } from '../../../main/contract/calls.ts'
import { fixed } from '../../../main/contract/figures.ts'
import { call } from '../../app/transport.ts'
import { momentText } from '../../ui/dates.ts'
import { Problems } from '../../ui/Problems.tsx'
import { useTexts } from '../../ui/texts.tsx'

interface CopyLineProps {
  readonly copy: CallOutput<'copy.list'>['copies'][number]
  readonly onGoBack: (name: string) => Promise<void>
}

/** One copy: looked into first, gone back to only from there. */
export const CopyLine = ({ copy, onGoBack }: CopyLineProps) => {
  const t = useTexts()
  const [seen, setSeen] = useState<Result<CallOutput<'copy.look'>> | null>(null)
  const [going, setGoing] = useState(false)
  const at = momentText(copy.at)
  const goBack = async (): Promise<void> => {
    setGoing(true)
    await onGoBack(copy.name)
    setGoing(false)
  }
  return (
    <li className="copy-line">
      <div className="copy-head">
        <strong>{at}</strong>
        <span className="muted">{t(`copies:kind.${copy.kind}`)}</span>
        <span className="muted">{t('copies:size', { mb: fixed(copy.bytes / 1e6, 1) })}</span>
        <button
          type="button"
          className="word"
          aria-label={t('copies:lookAt', { at })}
          onClick={async () => setSeen(await call('copy.look', { name: copy.name }))}
        >
          {t('copies:look')}
        </button>
      </div>
      {seen && !seen.ok && <Problems problems={seen.problems} />}
      {seen?.ok && (
        <div className="copy-inside" role="status">
          <p>
            {t('copies:tools', { count: seen.value.tools })}, {t('copies:lines', { count: seen.value.logLines })}.{' '}
            {seen.value.changedAt === null
              ? t('copies:unchanged')
              : t('copies:changed', { at: momentText(seen.value.changedAt) })}
          </p>
          <button type="button" className="key" disabled={going} onClick={() => void goBack()}>
            {t('copies:goBack')}
          </button>
          <p className="muted">{t('copies:wayBack')}</p>
        </div>
      )}
    </li>
  )
}
