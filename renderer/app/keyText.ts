import type { TFunction } from 'i18next'
import type { Shortcut } from './shortcuts.ts'

/** A key as it is written on a keyboard; the first of several. */
export const keyText = (t: TFunction, { keys, held }: Shortcut): string => {
  const [key = ''] = keys
  const named = key === ' ' ? 'Space' : key
  const text = named.length > 1 ? t(`shortcuts:key.${named}`) : named.toUpperCase()
  return held ? t('shortcuts:held', { key: text }) : text
}
