import type { TFunction } from 'i18next'
import type { Change } from '../../main/contract/entities.ts'

/** The kind of a record that was changed, and its name; the settings are one, and have none. */
export const recordName = (t: TFunction, { noun, label }: Pick<Change, 'noun' | 'label'>): string => {
  const kind = t(`history:noun.${noun}`)
  return noun === 'settings' ? kind : `${kind} ${label}`
}
