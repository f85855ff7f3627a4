import { basename } from 'node:path'
import type { MenuItemConstructorOptions as Item } from 'electron'
import type { TFunction } from 'i18next'

/** What the menu shows of how things are. */
export interface MenuState {
  /** Paths opened lately, newest first. */
  readonly recent: readonly string[]
  readonly theme: Theme
}

export const themes = ['light', 'dark', 'system'] as const
export type Theme = (typeof themes)[number]

/** What the menu's words do. */
export interface MenuDeeds {
  /** Asks the page for one of its actions, by the name its shortcuts have. */
  act(action: string): void
  choose(): void
  open(path: string): void
  forgetRecent(): void
  setTheme(theme: Theme): void
}

/** A file is told from another of its name by the folder it lies in, in the hint that some systems show. */
const recentItem = (path: string, { open }: MenuDeeds): Item => ({
  // A single & would mark the next letter as the one to press.
  label: basename(path).replaceAll('&', '&&'),
  toolTip: path,
  click: () => open(path),
})

const recentMenu = (t: TFunction, { recent }: MenuState, deeds: MenuDeeds): Item[] =>
  recent.length === 0
    ? [{ label: t('hosts:menu.noRecent'), enabled: false }]
    : [
        ...recent.map((path) => recentItem(path, deeds)),
        { type: 'separator' },
        { label: t('hosts:menu.forgetRecent'), click: deeds.forgetRecent },
      ]

/** Where a Mac keeps what is the program's as a whole. */
const appMenu = (t: TFunction): Item => ({
  label: 'Camberwright',
  submenu: [
    { role: 'about', label: t('hosts:menu.about') },
    { type: 'separator' },
    { role: 'services', label: t('hosts:menu.services') },
    { type: 'separator' },
    { role: 'hide', label: t('hosts:menu.hide') },
    { role: 'hideOthers', label: t('hosts:menu.hideOthers') },
    { role: 'unhide', label: t('hosts:menu.unhide') },
    { type: 'separator' },
    { role: 'quit', label: t('hosts:menu.quit') },
  ],
})

const fileMenu = (isMac: boolean, t: TFunction, state: MenuState, deeds: MenuDeeds): Item => ({
  label: t('hosts:menu.file'),
  submenu: [
    { label: t('hosts:menu.open'), accelerator: 'CmdOrCtrl+O', click: deeds.choose },
    { label: t('hosts:menu.recent'), submenu: recentMenu(t, state, deeds) },
    { type: 'separator' },
    { label: t('hosts:menu.jobCard'), accelerator: 'CmdOrCtrl+Shift+C', click: () => deeds.act('jobCard') },
    { label: t('hosts:menu.print'), accelerator: 'CmdOrCtrl+P', click: () => deeds.act('printCard') },
    { type: 'separator' },
    isMac ? { role: 'close', label: t('hosts:menu.close') } : { role: 'quit', label: t('hosts:menu.exit') },
  ],
})

const editRoles = ['undo', 'redo', 'cut', 'copy', 'paste', 'selectAll'] as const

/** The roles act on what is being typed; the newest change of the rack is taken back by its own word. */
const editMenu = (t: TFunction, { act }: MenuDeeds): Item => ({
  label: t('hosts:menu.edit'),
  submenu: [
    ...editRoles.map((role): Item => ({ role, label: t(`hosts:menu.${role}`) })),
    { type: 'separator' },
    { label: t('hosts:menu.takeBack'), click: () => act('undo') },
  ],
})

/** @returns the page's screens in their order, with their names: the texts list them */
const screensOf = (t: TFunction): readonly (readonly [string, string])[] =>
  Object.entries(t('common:screen', { returnObjects: true }) as Record<string, string>)

const goMenu = (t: TFunction, { act }: MenuDeeds): Item => ({
  label: t('hosts:menu.go'),
  submenu: screensOf(t).map(([screen, label], i) => ({
    label,
    accelerator: `CmdOrCtrl+${i + 1}`,
    click: () => act(`go.${screen}`),
  })),
})

const viewMenu = (t: TFunction, { theme }: MenuState, { setTheme }: MenuDeeds): Item => ({
  label: t('hosts:menu.view'),
  submenu: [
    ...themes.map(
      (each): Item => ({
        label: t(`common:settings.theme.${each}`),
        type: 'radio',
        checked: each === theme,
        click: () => setTheme(each),
      }),
    ),
    { type: 'separator' },
    { role: 'resetZoom', label: t('hosts:menu.zoomReset') },
    { role: 'zoomIn', label: t('hosts:menu.zoomIn') },
    { role: 'zoomOut', label: t('hosts:menu.zoomOut') },
    { type: 'separator' },
    { role: 'togglefullscreen', label: t('hosts:menu.fullScreen') },
  ],
})

const windowMenu = (t: TFunction): Item => ({
  role: 'window',
  label: t('hosts:menu.window'),
  submenu: [
    { role: 'minimize', label: t('hosts:menu.minimize') },
    { role: 'zoom', label: t('hosts:menu.zoomWindow') },
    { type: 'separator' },
    { role: 'front', label: t('hosts:menu.front') },
  ],
})

const helpMenu = (t: TFunction, { act }: MenuDeeds): Item => ({
  role: 'help',
  label: t('hosts:menu.help'),
  submenu: [
    { label: t('hosts:menu.helpPages'), click: () => act('help') },
    { label: t('hosts:menu.keys'), click: () => act('keys') },
    { label: t('hosts:menu.reports'), click: () => act('reports') },
  ],
})

/** The native menu, in the habit of its system: a Mac has the program's own menu first and one of windows. */
export const menuTemplate = (
  platform: NodeJS.Platform,
  t: TFunction,
  state: MenuState,
  deeds: MenuDeeds,
): readonly Item[] => {
  const isMac = platform === 'darwin'
  return [
    ...(isMac ? [appMenu(t)] : []),
    fileMenu(isMac, t, state, deeds),
    editMenu(t, deeds),
    goMenu(t, deeds),
    viewMenu(t, state, deeds),
    ...(isMac ? [windowMenu(t)] : []),
    helpMenu(t, deeds),
  ]
}
