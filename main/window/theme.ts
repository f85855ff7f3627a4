import { nativeTheme } from 'electron'
import { settingsSchema } from '../contract/entities.ts'
import type { ServiceClient } from '../serviceClient.ts'
import type { Theme } from './menuTemplate.ts'

/** Light or dark as the workshop's settings say, for what the system draws: menus, boxes, the window before its page. */
export interface ThemeKeeper {
  theme(): Theme
  set(theme: Theme): Promise<void>
}

/** @param changed told when it is another, whoever set it */
export const keepTheme = async (services: ServiceClient, changed: () => void): Promise<ThemeKeeper> => {
  const read = async () => {
    const settings = await services.call('settings.get', {}, 'theme')
    return settings.ok ? settingsSchema.parse(settings.value) : null
  }
  const follow = async (): Promise<void> => {
    const theme = (await read())?.theme ?? 'system'
    if (nativeTheme.themeSource === theme) return
    nativeTheme.themeSource = theme
    changed()
  }
  services.onEvent((event) => {
    if (event.type === 'changed' && event.noun === 'settings') void follow()
  })
  await follow()
  return {
    theme: () => nativeTheme.themeSource,
    set: async (theme) => {
      const settings = await read()
      if (settings) await services.call('settings.edit', { ...settings, theme }, 'theme')
    },
  }
}
