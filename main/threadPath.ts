import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

/**
 * The file of a thread. Run from source it is beside this one; bundled, this code may lie one folder deeper.
 *
 * @param name as in `worker.ts`, without its ending
 */
export const threadPath = (name: 'worker' | 'maker'): string => {
  const names = import.meta.url.endsWith('.ts') ? [`./${name}.ts`] : [`./${name}.js`, `../${name}.js`]
  const places = names.map((place) => fileURLToPath(new URL(place, import.meta.url)))
  return places.find((place) => existsSync(place)) ?? (places[0] as string)
}
