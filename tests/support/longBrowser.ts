import { spawnSync } from 'node:child_process'
import { join } from 'node:path'

const root = join(import.meta.dirname, '..', '..')

/** The browser tests marked `@long`, once. The program must be built. */
export const faultOfLongBrowser = async (): Promise<string | null> => {
  const { status, stdout } = spawnSync(
    'npx',
    ['playwright', 'test', '--config', 'tests/playwright.config.ts', '--project', 'loopback', '--grep', '@long'],
    { cwd: root, encoding: 'utf8', env: { ...process.env, LONG: '1' } },
  )
  return status === 0 ? null : stdout.slice(-2000)
}
