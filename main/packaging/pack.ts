import { spawnSync } from 'node:child_process'
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import packageJson from '../../package.json' with { type: 'json' }
import { billOfMaterials } from './billOfMaterials.ts'
import { builderConfig } from './builder.ts'
import { makeDummyElectron } from './dummyElectron.ts'
import { byFolder, inventoryOf } from './inventory.ts'
import { licencesOf } from './licences.ts'

/**
 * `npm run pack`: the licences, the bill of materials and the packages for this system, under out/pack. The packer is
 * fetched when it is needed: it weighs 95 MB that nobody else should install.
 * `npm run pack -- --licences` writes the licences alone; `-- --inspect` packs round a shell that is none, for machines
 * where Electron's cannot be had, and lists what is in it.
 */
const PACKER = 'electron-builder@26.17.0'

const root = join(import.meta.dirname, '..', '..')
const folder = join(root, 'out', 'pack')

const run = (command: string, args: readonly string[]): void => {
  const { status } = spawnSync(command, args, { cwd: root, stdio: 'inherit', shell: process.platform === 'win32' })
  if (status !== 0) process.exit(status ?? 1)
}

const pack = (config: object, args: readonly string[]): void => {
  writeFileSync(join(folder, 'builder.json'), JSON.stringify(config, null, 2))
  run('npm', ['run', 'build'])
  run('npx', ['--yes', PACKER, '--config', join('out', 'pack', 'builder.json'), ...args])
}

const inspect = (): void => {
  makeDummyElectron(join(folder, 'electron'))
  pack({ ...builderConfig, electronDist: join('out', 'pack', 'electron') }, ['--dir', '--linux', '--x64'])
  const files = inventoryOf(join(folder, 'linux-unpacked', 'resources', 'app.asar'))
  for (const [name, bytes] of byFolder(files, 2)) console.log(`${(bytes / 1000).toFixed(0).padStart(7)} kB  ${name}`)
}

const given = process.argv.slice(2)
const licences = licencesOf(root)
writeFileSync(join(root, 'assets', 'licences.json'), `${JSON.stringify(licences, null, 2)}\n`)
if (!given.includes('--licences')) {
  mkdirSync(folder, { recursive: true })
  writeFileSync(join(folder, 'bill-of-materials.json'), billOfMaterials(packageJson.version, licences))
  if (given.includes('--inspect')) inspect()
  else pack(builderConfig, given)
}
