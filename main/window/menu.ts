import { Menu } from 'electron'
import type { TFunction } from 'i18next'

/** The native menu: what every window of its system has. What the program does is in its window. */
export const setMenu = (t: TFunction): void => {
  const { platform } = process
  Menu.setApplicationMenu(
    Menu.buildFromTemplate([
      ...(platform === 'darwin' ? [{ role: 'appMenu' as const }] : []),
      { label: t('hosts:menu.file'), submenu: [{ role: platform === 'darwin' ? 'close' : 'quit' }] },
      { role: 'editMenu' },
      {
        label: t('hosts:menu.view'),
        submenu: [{ role: 'resetZoom' }, { role: 'zoomIn' }, { role: 'zoomOut' }, { role: 'togglefullscreen' }],
      },
    ]),
  )
}
