import { useCallback, useEffect, useState } from 'react'
import type { BenchLog as Reading, Tool } from '../../main/contract/entities.ts'
import { useApp } from '../app/store.ts'
import { call } from '../app/transport.ts'
import { shortDate } from '../ui/dates.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { ReadingForm } from './ReadingForm.tsx'

/** What was measured on this tool, newest first, and a short form for the next reading. */
export const BenchLog = ({ tool }: { readonly tool: Tool }) => {
  const t = useTexts()
  const { readings, reload } = useReadings(tool.id)
  return (
    <section className="bench-log" aria-label={t('rack:log.heading')}>
      <h3>{t('rack:log.heading')}</h3>
      {readings.length === 0 ? (
        <p className="muted">{t('rack:log.empty')}</p>
      ) : (
        <ul>
          {readings.map((reading) => (
            <ReadingLine key={reading.id} reading={reading} />
          ))}
        </ul>
      )}
      <ReadingForm tool={tool} onAdded={reload} />
    </section>
  )
}

const useReadings = (toolId: string) => {
  const [readings, setReadings] = useState<readonly Reading[]>([])
  // An undo changes the log as well; every change comes with a message.
  const message = useApp((app) => app.message)
  const reload = useCallback(async () => {
    const listed = await call('benchLog.list', { toolId })
    if (listed.ok) setReadings([...listed.value].sort((a, b) => b.at.localeCompare(a.at)))
  }, [toolId])
  // biome-ignore lint/correctness/useExhaustiveDependencies: the message is the trigger
  useEffect(() => void reload(), [reload, message])
  return { readings, reload }
}

const ReadingLine = ({ reading }: { readonly reading: Reading }) => {
  const t = useTexts()
  const figures = useFigures()
  const { reliefLeftMm, reliefRightMm, at, stage, who, note } = reading
  const relief = (mm: number | null) => (mm === null ? '–' : figures.of('aim.reliefMm', mm).text)
  const words = [who, note].filter(Boolean).join(': ')
  return (
    <li>
      <span className="muted">{shortDate(at)}</span>
      <span>
        {t(`common:stage.${stage}`)} {relief(reliefLeftMm)} | {relief(reliefRightMm)}{' '}
        {figures.of('aim.reliefMm', 0).unit}
        {words !== '' && <span className="muted"> {words}</span>}
      </span>
    </li>
  )
}
