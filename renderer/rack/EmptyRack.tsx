import { useTexts } from '../ui/texts.tsx'

/** A rack of one's own on the first day: what to do, in the order of the work. */
export const EmptyRack = ({ onAdd }: { readonly onAdd: () => void }) => {
  const t = useTexts()
  return (
    <div className="rack-empty">
      <p className="sentence">{t('rack:empty.heading')}</p>
      <ol>
        {(['station', 'fixture', 'tool'] as const).map((step) => (
          <li key={step}>{t(`rack:empty.${step}`)}</li>
        ))}
      </ol>
      <button type="button" className="key key-main" onClick={onAdd}>
        {t('rack:empty.add')}
      </button>
    </div>
  )
}
