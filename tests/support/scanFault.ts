import { spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'

/** Fetched when it is needed, as the packer is: 43 MB that nobody else should install. MIT and MPL 2.0, both kept. */
const SCANNER = ['eslint@9.39.5', '@microsoft/eslint-plugin-sdl@1.1.0', 'eslint-plugin-no-unsanitized@4.1.5']

const root = join(import.meta.dirname, '..', '..')
const folder = join(root, '.cache', 'scan')

/** Every rule of both plugins, and the engine's own about text that is run. */
const config = `import sdl from '@microsoft/eslint-plugin-sdl'
import unsanitized from 'eslint-plugin-no-unsanitized'
const all = (name, plugin) => Object.keys(plugin.rules).map((rule) => [name + '/' + rule, 'error'])
const own = ['no-eval', 'no-implied-eval', 'no-new-func', 'no-script-url'].map((rule) => [rule, 'error'])
export default [{
  files: ['**/*.js', '**/*.cjs'],
  plugins: { sdl, unsanitized },
  linterOptions: { noInlineConfig: true },
  rules: Object.fromEntries([...all('sdl', sdl), ...all('unsanitized', unsanitized), ...own]),
}]
`

/** Faults that the scan must find, or it has not looked. */
const planted = `import { BrowserWindow } from 'electron'
new BrowserWindow({ webPreferences: { nodeIntegration: true } })
fetch('http://elsewhere.invalid/')
document.body.innerHTML = location.hash
eval(location.hash)
`
const MUST_FIND = ['no-eval', 'sdl/no-electron-node-integration', 'sdl/no-insecure-url', 'unsanitized/property']

const reportSchema = z.array(
  z.object({
    filePath: z.string(),
    messages: z.array(z.object({ ruleId: z.string().nullable(), line: z.int().optional(), message: z.string() })),
  }),
)

const run = (command: string, args: readonly string[]): string => {
  const { stdout, stderr, status } = spawnSync(command, args, {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 1e8,
    shell: process.platform === 'win32',
  })
  // One: something was found.
  if (status !== 0 && status !== 1) throw new Error(`${command} ended with ${status}: ${stderr.slice(-500)}`)
  return stdout
}

const fetchScanner = (): void => {
  mkdirSync(folder, { recursive: true })
  writeFileSync(join(folder, 'package.json'), '{ "private": true, "type": "module" }')
  writeFileSync(join(folder, 'eslint.config.js'), config)
  run('npm', ['install', '--ignore-scripts', '--no-audit', '--no-fund', ...SCANNER])
}

const scan = (): z.output<typeof reportSchema> =>
  reportSchema.parse(JSON.parse(run('npx', ['eslint', '--format', 'json', 'scanned'])))

/** A kept general scanner over main and preload as they are built: nothing found there, and what is planted beside them is. Fetches the scanner. */
export const faultOfScan = async (): Promise<string | null> => {
  fetchScanner()
  const scanned = join(folder, 'scanned')
  rmSync(scanned, { recursive: true, force: true })
  for (const part of ['main', 'preload']) cpSync(join(root, 'out', part), join(scanned, part), { recursive: true })
  writeFileSync(join(scanned, 'planted.js'), planted)
  const files = scan()
  const isPlanted = ({ filePath }: { readonly filePath: string }) => filePath.endsWith('planted.js')
  const seen = new Set(files.find(isPlanted)?.messages.map(({ ruleId }) => ruleId))
  const missed = MUST_FIND.filter((rule) => !seen.has(rule))
  if (missed.length > 0 || files.length < 4) return `looked at ${files.length} files and missed ${missed.join(', ')}`
  const found = files
    .filter((file) => !isPlanted(file))
    .flatMap(({ filePath, messages }) =>
      messages.map(({ ruleId, line, message }) => `${filePath}:${line} ${ruleId}: ${message}`),
    )
  return found.length === 0 ? null : found.join('; ')
}
