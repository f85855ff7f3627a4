import { useEffect, useSyncExternalStore } from 'react'
import { useApp } from './store.ts'

const FORCED = '(forced-colors: active)'

const follow = (changed: () => void): (() => void) => {
  const media = matchMedia(FORCED)
  media.addEventListener('change', changed)
  return () => media.removeEventListener('change', changed)
}

/** Light or dark as the settings say; where the system forces its own colours, as those are. */
export const useTheme = (): void => {
  const chosen = useApp((app) => app.settings.theme)
  const forced = useSyncExternalStore(follow, () => matchMedia(FORCED).matches)
  useEffect(() => {
    document.documentElement.dataset.theme = forced ? 'system' : chosen
  }, [forced, chosen])
}
