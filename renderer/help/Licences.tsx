import licences from '../../assets/licences.json' with { type: 'json' }
import { useTexts } from '../ui/texts.tsx'

/** What the program is made with and what its makers ask for: each licence word for word, folded. */
const Licences = () => {
  const t = useTexts()
  return (
    <div className="help-entry">
      <h3>{t('help:licences')}</h3>
      {licences.map(({ name, version, licence, text }) => (
        <details key={`${name} ${version}`}>
          <summary>{t('help:licenceOf', { name, version, licence })}</summary>
          <p className="help-licence">{text}</p>
        </details>
      ))}
    </div>
  )
}

export default Licences
