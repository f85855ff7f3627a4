import { useEffect } from 'react'
import { act, canAct } from './actions.ts'
import { type Keeps, shortcutFor } from './shortcuts.ts'
import { useApp } from './store.ts'

/** Controls that are written in. Type-ahead in a list counts as writing. */
const WRITTEN = 'textarea, select, [contenteditable], input:not([type=range], [type=checkbox], [type=radio])'
/** Controls that arrows, Home and End belong to. */
const MOVED =
  'input[type=range], input[type=radio], [role=application], [role=grid], [role=slider], [role=tree], [role=listbox]'
/** What scrolls while it has the focus itself; a control within it keeps its own keys alone. */
const SCROLLED = '[tabindex="0"]'
/** Controls that Space presses. */
const PRESSED = 'button, summary, input:not([type=range]), [role=button], [role=switch], [role=checkbox]'

/** What the control that has the focus keeps of the keys. A sheet laid over the window keeps them all. */
const keptBy = (target: EventTarget | null): Keeps => {
  if (document.querySelector('dialog:modal')) return 'all'
  if (!(target instanceof Element)) return 'nothing'
  if (target.closest(WRITTEN)) return 'all'
  const moves = target.closest(MOVED) !== null || target.matches(SCROLLED)
  const press = target.closest(PRESSED) !== null
  if (moves && press) return 'both'
  return moves ? 'moves' : press ? 'press' : 'nothing'
}

const take = (event: KeyboardEvent): void => {
  if (event.defaultPrevented || event.isComposing) return
  const singleKeys = useApp.getState().settings.singleKeys === 'on'
  const meant = shortcutFor(event, keptBy(event.target), singleKeys, canAct)
  if (!meant) return
  event.preventDefault()
  act(meant.action)
}

/** Does what the keys of shortcuts.ts say, wherever the focus is. */
export const useShortcuts = (): void =>
  useEffect(() => {
    addEventListener('keydown', take)
    return () => removeEventListener('keydown', take)
  }, [])
