import type { MessageBoxOptions } from 'electron'
import { stage } from '../stage.ts'

export const Menu = { setApplicationMenu: (_menu: unknown) => undefined, buildFromTemplate: (_items: unknown) => null }

export const screen = { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }] }

export const dialog = {
  showMessageBox: async ({ message }: MessageBoxOptions) => {
    stage().asked.push(message)
    return { response: stage().press, checkboxChecked: false }
  },
}

export const systemPreferences = { askForMediaAccess: async (_media: string) => true }
