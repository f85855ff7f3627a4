import { useApp } from '../app/store.ts'
import { saveSettings } from '../app/storeRack.ts'
import { Tick } from '../ui/Tick.tsx'
import { useTexts } from '../ui/texts.tsx'
import { allColumns, type ColumnName, columnsOf, lastingColumns, withColumn } from './columns.tsx'

/** Which columns the list shows; kept with the workshop's settings. */
export const ColumnChoice = () => {
  const t = useTexts()
  const chosen = useApp((app) => app.settings.columns)
  const shown = columnsOf(chosen)
  const names = (Object.keys(allColumns) as ColumnName[]).filter((name) => !lastingColumns.includes(name))
  return (
    <details className="more-filters">
      <summary>{t('rack:columns.open')}</summary>
      <div className="column-choice">
        {names.map((name) => (
          <Tick
            key={name}
            name={t(`rack:column.${name}`)}
            checked={shown.includes(name)}
            onTick={(show) => saveSettings({ columns: withColumn(chosen, name, show) })}
          />
        ))}
        {chosen !== '' && (
          <button type="button" className="word" onClick={() => void saveSettings({ columns: '' })}>
            {t('rack:columns.usual')}
          </button>
        )}
      </div>
      <p className="muted">{t('rack:columns.narrow')}</p>
    </details>
  )
}
