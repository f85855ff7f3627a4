import { useTexts } from '../../ui/texts.tsx'
import { layOut, toolNames, useToolbox } from './toolbox.ts'

/** Which measuring tools lie beside the model. */
export const ToolsPanel = () => {
  const t = useTexts()
  const laid = useToolbox((box) => box.laid)
  return (
    <fieldset className="panel-checks">
      <legend>{t('tools:legend')}</legend>
      {toolNames.map((name) => (
        <label key={name}>
          <input type="checkbox" checked={laid[name]} onChange={(event) => layOut(name, event.target.checked)} />
          {t(`tools:${name}.heading`)}
        </label>
      ))}
    </fieldset>
  )
}
