import { existsSync } from 'node:fs'

/** Where systems put a browser of the Chromium family; the first that is there is used, else Playwright's own. */
const places = [
  process.env.CHROMIUM_PATH ?? '',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
]

/** @returns the path of an installed browser, or null */
export const installedChromium = (): string | null => places.find((place) => place !== '' && existsSync(place)) ?? null

const isRoot = process.getuid?.() === 0

/**
 * What a browser does beside showing the page: the last such list holds, so it names what the test runner switches off, too,
 * and the address field's own pages, which take an eighth of all the time.
 */
const unwanted = [
  'AvoidUnnecessaryBeforeUnloadCheckSync',
  'DestroyProfileOnBrowserClose',
  'HttpsUpgrades',
  'HttpsFirstBalancedModeAutoEnable',
  'MediaRouter',
  'PaintHolding',
  'ThirdPartyStoragePartitioning',
  'OptimizationHints',
  'NetworkTimeServiceQuerying',
  'AimEnabled',
  'PreconnectToSearch',
  'WebUIOmniboxPopup',
  'WebUIOmniboxAimPopup',
  'WebUIOmniboxFullPopup',
]

/** How tests start Chromium: graphics without a GPU, and its sandbox wherever the user is not root. */
export const chromiumOptions = () => {
  const executablePath = installedChromium()
  return {
    ...(executablePath !== null && { executablePath }),
    chromiumSandbox: !isRoot,
    args: ['--enable-unsafe-swiftshader', '--test-type', `--disable-features=${unwanted.join(',')}`],
  }
}
