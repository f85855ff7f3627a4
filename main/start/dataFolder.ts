import { homedir } from 'node:os'
import { join } from 'node:path'

/** What a data folder depends on; injected so that each platform can be tested on any. */
export interface Machine {
  readonly platform: NodeJS.Platform
  readonly env: Readonly<Record<string, string | undefined>>
  readonly home: string
}

export const thisMachine = (): Machine => ({ platform: process.platform, env: process.env, home: homedir() })

/** The platform's folder for what programs keep. */
const applicationData = ({ platform, env, home }: Machine): string => {
  if (platform === 'win32') return env.APPDATA ?? join(home, 'AppData', 'Roaming')
  if (platform === 'darwin') return join(home, 'Library', 'Application Support')
  return env.XDG_CONFIG_HOME || join(home, '.config')
}

/** Where the data lies unless told otherwise: the very folder that Electron gives, so that every host has the same racks. */
export const defaultDataFolder = (machine: Machine): string => join(applicationData(machine), 'camberwright')
