import { figureNames } from '../../../geometry/lesson/figureNames.ts'
import { useTexts } from '../../ui/texts.tsx'

/** What can stand between double braces, with what it is: names of figures, alone or after a case. */
export const FigureNames = ({ cases }: { readonly cases: readonly string[] }) => {
  const t = useTexts()
  return (
    <details className="write-names">
      <summary>{t('write:names.summary')}</summary>
      <p>{t('write:names.note', { cases: cases.join(', ') || t('write:names.noCases') })}</p>
      <dl>
        {figureNames.map((name) => (
          <div key={name}>
            <dt>
              <code>{`{{${name}}}`}</code>
            </dt>
            <dd>{t(`write:figure.${name}`)}</dd>
          </div>
        ))}
      </dl>
    </details>
  )
}
