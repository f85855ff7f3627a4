import type { TFunction } from 'i18next'
import type { ServiceClient } from '../serviceClient.ts'
import { act, showMenu } from './menu.ts'
import { createOpener, type Opener } from './openFiles.ts'
import { keepTheme, type ThemeKeeper } from './theme.ts'
import { keepLanguage } from './tongue.ts'

/** The native menu with the files opened lately and the theme, drawn anew whenever one of these is another. */
export const showSystemParts = async (services: ServiceClient, t: TFunction): Promise<Opener> => {
  let keeper: ThemeKeeper | null = null
  const draw = (): void => {
    showMenu(
      t,
      { recent: opener.recent(), theme: keeper?.theme() ?? 'system' },
      {
        act,
        choose: () => void opener.choose(),
        open: (path) => void opener.open([path]),
        forgetRecent: opener.forget,
        setTheme: (theme) => void keeper?.set(theme),
      },
    )
  }
  const opener = createOpener(services, t, draw)
  await keepLanguage(services, draw)
  keeper = await keepTheme(services, draw)
  draw()
  return opener
}
