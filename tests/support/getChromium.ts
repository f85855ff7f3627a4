import { existsSync } from 'node:fs'
import { chromium } from '@playwright/test'
import { installedChromium } from './chromium.ts'
import { type Finished, finish } from './processes.ts'

const isRootOnDebian = (): boolean => process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')

const installByApt = (): Finished => {
  const env = { DEBIAN_FRONTEND: 'noninteractive' }
  const lists = finish('apt-get', ['update'], env)
  return lists.ok ? finish('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], env) : lists
}

const isThere = (): boolean => installedChromium() !== null || existsSync(chromium.executablePath())

/** Finds a browser of the Chromium family, or installs one. @returns whether there is one now, and if not, why not */
export const getChromium = (): Finished => {
  if (isThere()) return { ok: true, output: '' }
  process.stdout.write('installing Chromium\n')
  const installed = isRootOnDebian() ? installByApt() : finish('playwright', ['install', 'chromium'])
  return { ok: isThere(), output: installed.output }
}
