import { useTexts } from '../ui/texts.tsx'
import type { PanelProps } from './GrindBar.tsx'
import { showView, useViewing, viewNames } from './viewing.ts'
import { PlaceSlider } from './views/PlaceSlider.tsx'

/** Which views stand beside the model, and the place across that is marked in them. */
export const ViewsPanel = ({ running }: PanelProps) => {
  const t = useTexts()
  const shown = useViewing((viewing) => viewing.shown)
  return (
    <>
      <fieldset className="panel-checks">
        <legend>{t('grind:views.legend')}</legend>
        {viewNames.map((name) => (
          <label key={name}>
            <input type="checkbox" checked={shown[name]} onChange={(event) => showView(name, event.target.checked)} />
            {t(`views:name.${name}`)}
          </label>
        ))}
      </fieldset>
      <PlaceSlider running={running} />
    </>
  )
}
