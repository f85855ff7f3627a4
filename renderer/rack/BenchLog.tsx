import type { Tool } from '../../main/contract/entities.ts'
import { hashFor } from '../app/route.ts'
import { Readings } from '../measure/Readings.tsx'
import { useReadings } from '../measure/useReadings.ts'
import { useTexts } from '../ui/texts.tsx'

/** What was measured on this tool, and the way to the next reading. */
export const BenchLog = ({ tool }: { readonly tool: Tool }) => {
  const t = useTexts()
  return (
    <section className="bench-log" aria-label={t('measure:log.heading')}>
      <h3>{t('measure:log.heading')}</h3>
      <Readings tool={tool} readings={useReadings(tool.id)} />
      <a className="key" href={hashFor('measure', tool.code)}>
        {t('measure:log.measure')}
      </a>
    </section>
  )
}
