import type { TFunction } from 'i18next'
import { keyText } from '../app/keyText.ts'
import { shortcuts } from '../app/shortcuts.ts'
import type { Entry } from './entry.ts'

/** Every shortcut of the list, the key first. */
export const keyEntries = (t: TFunction): readonly Entry[] =>
  shortcuts.map((shortcut) => ({
    page: 'keys',
    id: `keys.${shortcut.action}`,
    title: keyText(t, shortcut),
    group: t(`shortcuts:where.${shortcut.where}`),
    lines: [t(`shortcuts:action.${shortcut.action}`)],
  }))
