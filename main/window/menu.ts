import { Menu } from 'electron'
import type { TFunction } from 'i18next'
import { type MenuDeeds, type MenuState, menuTemplate } from './menuTemplate.ts'
import { programWindow } from './programWindow.ts'

/** Asks the page for one of its actions; a window whose page is not there yet hears nothing. */
export const act = (action: string): void => {
  programWindow()?.webContents.send('event', { type: 'act', action })
}

/** Shows the native menu as things are now. */
export const showMenu = (t: TFunction, state: MenuState, deeds: MenuDeeds): void =>
  Menu.setApplicationMenu(Menu.buildFromTemplate([...menuTemplate(process.platform, t, state, deeds)]))
