import type { Caution } from '../../geometry/report.ts'
import { useTexts } from '../ui/texts.tsx'

/** What a user should know though the job can be done. */
export const Cautions = ({ cautions }: { readonly cautions: readonly Caution[] }) => {
  const t = useTexts()
  if (cautions.length === 0) return null
  return (
    <ul className="cautions" aria-label={t('common:cautions')}>
      {cautions.map(({ code, params }) => (
        <li key={`${code} ${JSON.stringify(params)}`} className="caution">
          {t(`cautions:${code}`, { ...params })}
        </li>
      ))}
    </ul>
  )
}
