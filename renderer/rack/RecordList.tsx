import { useTexts } from '../ui/texts.tsx'

interface RecordListProps<R> {
  readonly noun: 'station' | 'fixture' | 'place' | 'person' | 'purpose' | 'ownField'
  readonly lines: readonly { readonly record: R; readonly name: string; readonly words: string }[]
  readonly onOpen: (record: R | null) => void
}

/** A short list under the rack: each record opens its sheet, and another can be added. */
export const RecordList = <R extends { readonly id: string; readonly code: string }>({
  noun,
  lines,
  onOpen,
}: RecordListProps<R>) => {
  const t = useTexts()
  return (
    <section aria-label={t(`rack:${noun}.heading`)}>
      <h2>{t(`rack:${noun}.heading`)}</h2>
      <ul>
        {lines.map(({ record, name, words }) => (
          <li key={record.id}>
            <button type="button" className="word" onClick={() => onOpen(record)}>
              {record.code} <strong>{name}</strong>
            </button>
            <span className="muted">{words}</span>
          </li>
        ))}
      </ul>
      <button type="button" className="word" onClick={() => onOpen(null)}>
        {t(`rack:${noun}.add`)}
      </button>
    </section>
  )
}
