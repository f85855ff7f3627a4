import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'

/** What the built program is made of, and the last file each part of the build writes. */
const sources = ['main', 'renderer', 'geometry', 'assets', 'electron.vite.config.ts', 'package.json']
const products = [
  'out/main/index.js',
  'out/main/worker.js',
  'out/main/maker.js',
  'out/preload/preload.cjs',
  'out/renderer/index.html',
]

/** Time of the last change at a path or anywhere under it (ms); folders count too, since a file may have been taken away. */
const newestMs = (path: string): number => {
  const { mtimeMs, isFolder } = look(path)
  if (!isFolder) return mtimeMs
  return Math.max(mtimeMs, ...readdirSync(path).map((name) => newestMs(join(path, name))))
}

const look = (path: string) => {
  const found = statSync(path, { throwIfNoEntry: false })
  return { mtimeMs: found?.mtimeMs ?? 0, isFolder: found?.isDirectory() ?? false }
}

/** Whether the built program is missing or older than what it is made of. @param root the project's folder */
export const isBuildStale = (root: string): boolean => {
  const built = Math.min(...products.map((path) => look(join(root, path)).mtimeMs))
  return built < Math.max(...sources.map((path) => newestMs(join(root, path))))
}

/** @returns whether the build succeeded; what goes wrong is printed by the builder itself */
export const build = async (root: string): Promise<boolean> => {
  const builder = join(root, 'node_modules', 'electron-vite', 'bin', 'electron-vite.js')
  const child = spawn(process.execPath, [builder, 'build', '--logLevel', 'warn'], {
    cwd: root,
    stdio: ['ignore', 'ignore', 'inherit'],
  })
  const [code] = await once(child, 'exit')
  return code === 0
}
