import { EventEmitter } from 'node:events'
import type { MenuItemConstructorOptions, MessageBoxOptions, NativeTheme, OpenDialogOptions } from 'electron'
import { stage } from '../stage.ts'

/** A menu is what it was made from. */
export const Menu = {
  setApplicationMenu: (menu: unknown) => {
    stage().menu = menu as readonly MenuItemConstructorOptions[]
  },
  buildFromTemplate: (items: readonly unknown[]) => items as never,
}

export const nativeTheme: Pick<NativeTheme, 'themeSource'> = { themeSource: 'system' }

export const screen = Object.assign(new EventEmitter(), {
  getAllDisplays: () => stage().screens.map((workArea) => ({ workArea })),
})

export const dialog = {
  showOpenDialog: async (_options: OpenDialogOptions) => {
    const filePaths = stage().chosen
    return { canceled: filePaths.length === 0, filePaths: [...filePaths] }
  },
  showErrorBox: (title: string, _content: string) => void stage().asked.push(title),
  showMessageBox: async ({ message }: MessageBoxOptions) => {
    stage().asked.push(message)
    return { response: stage().press, checkboxChecked: false }
  },
}

export const systemPreferences = { askForMediaAccess: async (_media: string) => true }
