import { settingsSchema } from '../contract/entities.ts'
import { language } from '../contract/language.ts'
import { speak } from '../contract/texts.ts'
import type { ServiceClient } from '../serviceClient.ts'

/** Has what the system draws, menus and boxes, speak the workshop's language. @param changed told when it is another, whoever set it */
export const keepLanguage = async (services: ServiceClient, changed: () => void): Promise<void> => {
  const follow = async (): Promise<void> => {
    const settings = await services.call('settings.get', {}, 'language')
    const wanted = settings.ok ? settingsSchema.parse(settings.value).language : language()
    if (wanted === language()) return
    await speak(wanted)
    changed()
  }
  services.onEvent((event) => {
    if (event.type === 'changed' && event.noun === 'settings') void follow()
  })
  await follow()
}
