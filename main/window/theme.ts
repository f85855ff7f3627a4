import { nativeTheme } from 'electron'
import type { ServiceClient } from '../serviceClient.ts'
import { followSettings, readSettings } from './followSettings.ts'
import type { Theme } from './menuTemplate.ts'

/** Light or dark as the workshop's settings say, for what the system draws: menus, boxes, the window before its page. */
export interface ThemeKeeper {
  theme(): Theme
  set(theme: Theme): Promise<void>
}

/** @param changed told when it is another, whoever set it */
export const keepTheme = async (services: ServiceClient, changed: () => void): Promise<ThemeKeeper> => {
  await followSettings(services, (settings) => {
    const theme = settings?.theme ?? 'system'
    if (nativeTheme.themeSource === theme) return
    nativeTheme.themeSource = theme
    changed()
  })
  return {
    theme: () => nativeTheme.themeSource,
    set: async (theme) => {
      const settings = await readSettings(services)
      if (settings) await services.call('settings.edit', { ...settings, theme }, 'theme')
    },
  }
}
