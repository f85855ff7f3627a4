import { useTexts } from '../ui/texts.tsx'
import { showView, useViewing, type ViewName } from './viewing.ts'

const offered: readonly ViewName[] = ['pressure', 'glass', 'bevel']

/** Which views stand beside the model. */
export const ViewsPanel = () => {
  const t = useTexts()
  const shown = useViewing((viewing) => viewing.shown)
  return (
    <fieldset className="panel-checks">
      <legend>{t('grind:views.legend')}</legend>
      {offered.map((name) => (
        <label key={name}>
          <input type="checkbox" checked={shown[name]} onChange={(event) => showView(name, event.target.checked)} />
          {t(`grind:${name}.heading`)}
        </label>
      ))}
    </fieldset>
  )
}
