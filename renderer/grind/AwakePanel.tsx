import { useEffect } from 'react'
import { useApp } from '../app/store.ts'
import { saveSettings } from '../app/storeRack.ts'
import { useAwake } from '../app/useAwake.ts'
import { Tick } from '../ui/Tick.tsx'
import { useTexts } from '../ui/texts.tsx'

/** Whether the screen may go dark while nobody touches it. */
export const AwakePanel = () => {
  const t = useTexts()
  const on = useApp((app) => app.settings.stayAwake === 'on')
  const { atWheel, state } = useAwake()
  return (
    <fieldset className="panel-checks">
      <legend>{t('awake:legend')}</legend>
      <Tick
        name={t('awake:whilePlaying')}
        checked={on}
        onTick={(checked) => saveSettings({ stayAwake: checked ? 'on' : 'off' })}
      />
      <Tick name={t('awake:atWheel')} checked={atWheel} onTick={(checked) => useAwake.setState({ atWheel: checked })} />
      <p role="status">{t(`awake:state.${state}`)}</p>
    </fieldset>
  )
}

/** Says while the screen is kept awake that it is; and tells the window that a grind plays. */
export const AwakeWord = ({ playing }: { readonly playing: boolean }) => {
  const t = useTexts()
  const kept = useAwake(({ state }) => state === 'kept')
  useEffect(() => {
    useAwake.setState({ playing })
    return () => useAwake.setState({ playing: false })
  }, [playing])
  return kept ? <span className="muted">{t('awake:kept')}</span> : null
}
