import { language } from '../contract/language.ts'
import { speak } from '../contract/texts.ts'
import type { ServiceClient } from '../serviceClient.ts'
import { followSettings } from './followSettings.ts'

/** Has what the system draws, menus and boxes, speak the workshop's language. @param changed told when it is another, whoever set it */
export const keepLanguage = (services: ServiceClient, changed: () => void): Promise<void> =>
  followSettings(services, async (settings) => {
    const wanted = settings?.language ?? language()
    if (wanted === language()) return
    await speak(wanted)
    changed()
  })
