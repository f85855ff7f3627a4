import { Options } from '../ui/Options.tsx'
import { useTexts } from '../ui/texts.tsx'
import { chooseLook, layerNames, lookNames, showLayer, useViewing } from './viewing.ts'

/** How the model is drawn, and which of its parts. */
export const LookPanel = () => {
  const t = useTexts()
  const look = useViewing((viewing) => viewing.look)
  const hidden = useViewing((viewing) => viewing.hidden)
  return (
    <>
      <Options
        legend={t('scene:look.legend')}
        options={lookNames.map((value) => ({ value, name: t(`scene:look.${value}`) }))}
        value={look}
        onChoose={chooseLook}
      />
      <fieldset className="panel-checks">
        <legend>{t('scene:layers.legend')}</legend>
        {layerNames.map((name) => (
          <label key={name}>
            <input
              type="checkbox"
              checked={!hidden[name]}
              onChange={(event) => showLayer(name, event.target.checked)}
            />
            {t(`scene:layers.${name}`)}
          </label>
        ))}
      </fieldset>
    </>
  )
}
