import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { billOfMaterials } from '../../main/packaging/billOfMaterials.ts'
import { builderConfig, fuses } from '../../main/packaging/builder.ts'
import { makeDummyElectron } from '../../main/packaging/dummyElectron.ts'
import { isAllowed, licencesOf } from '../../main/packaging/licences.ts'
import { readFuses } from '../../main/packaging/readFuses.ts'
import packageJson from '../../package.json' with { type: 'json' }

const root = join(import.meta.dirname, '..', '..')
const licences = licencesOf(root)

describe('licences', () => {
  it('of all that users get stand in assets/licences.json as they are now (npm run pack -- --licences)', () => {
    expect(JSON.parse(readFileSync(join(root, 'assets', 'licences.json'), 'utf8'))).toEqual(licences)
  })

  it('are those of every library that the program is built with or runs on, and let it be given on', () => {
    const names = licences.map(({ name }) => name)
    expect(names).toEqual(expect.arrayContaining(Object.keys(packageJson.dependencies)))
    expect(names).toEqual(expect.arrayContaining(['react', 'scheduler', 'three', 'mediabunny', 'pako']))
    expect(licences.filter(({ licence }) => !isAllowed(licence))).toEqual([])
  })

  it.each([
    ['MIT', true],
    ['(MIT OR GPL-3.0)', true],
    ['MIT AND Zlib', true],
    ['(MIT AND GPL-3.0)', false],
    ['GPL-3.0-only', false],
    ['', false],
  ])('%s may be part of it: %s', (expression, allowed) => expect(isAllowed(expression)).toBe(allowed))

  it('cover every library that the page imports', () => {
    const built = new Set(licences.map(({ name }) => name))
    const own = { ...packageJson.dependencies, ...packageJson.devDependencies }
    const page = ['react', 'react-dom', 'three', '@react-three/fiber', 'zustand', 'mediabunny', 'i18next', 'zod', 'qr']
    for (const name of page.filter((each) => each in own)) expect(built).toContain(name)
  })
})

it('the bill of materials names each library once, with version, licence and hash', () => {
  const bill = JSON.parse(billOfMaterials(packageJson.version, licences))
  expect(bill).toMatchObject({ bomFormat: 'CycloneDX', specVersion: '1.6' })
  expect(new Set(bill.components.map(({ purl }: { purl: string }) => purl)).size).toBe(licences.length)
  const zod = bill.components.find(({ name }: { name: string }) => name === 'zod')
  expect(zod).toMatchObject({
    purl: `pkg:npm/zod@${packageJson.dependencies.zod}`,
    licenses: [{ license: { id: 'MIT' } }],
  })
  expect(zod.hashes[0].content).toMatch(/^[0-9a-f]{128}$/)
})

describe('the package', () => {
  it('opens the program’s own files and no others', () => {
    expect(builderConfig.fileAssociations.map(({ ext }) => ext)).toEqual(['cwjob', 'cwlesson', 'cwrack'])
  })

  it('has every fuse set as Electron’s list of safe settings has it (from memory of that list)', () => {
    expect(fuses).toEqual({
      runAsNode: false,
      enableCookieEncryption: true,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      loadBrowserProcessSpecificV8Snapshot: false,
      grantFileProtocolExtraPrivileges: false,
    })
  })

  it('is read back: a shell as it comes has other fuses', () => {
    const folder = mkdtempSync(join(tmpdir(), 'camberwright-'))
    makeDummyElectron(folder)
    expect(readFuses(join(folder, 'electron'))).toMatchObject({ runAsNode: true, onlyLoadAppFromAsar: false })
    expect(readFuses(join(root, 'LICENSE'))).toBeNull()
    rmSync(folder, { recursive: true, force: true })
  })
})
