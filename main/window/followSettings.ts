import { type Settings, settingsSchema } from '../contract/entities.ts'
import type { ServiceClient } from '../serviceClient.ts'

/** @returns the workshop's settings; null where the data cannot be had */
export const readSettings = async (services: ServiceClient): Promise<Settings | null> => {
  const settings = await services.call('settings.get', {}, 'settings')
  return settings.ok ? settingsSchema.parse(settings.value) : null
}

/** Does something by the settings, now and whenever they are changed, by whomever. */
export const followSettings = async (
  services: ServiceClient,
  follow: (settings: Settings | null) => void | Promise<void>,
): Promise<void> => {
  const read = async (): Promise<void> => follow(await readSettings(services))
  services.onEvent((event) => {
    if (event.type === 'changed' && event.noun === 'settings') void read()
  })
  await read()
}
