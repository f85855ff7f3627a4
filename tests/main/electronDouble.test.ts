import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'

/** What types alone cannot see of the double; the rest is held against Electron's declarations in tests/shell/drift.ts. */
const root = join(import.meta.dirname, '..', '..')
const textsOf = (folder: string): string =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(join(root, folder, name), 'utf8'))
    .join('\n')

const namesIn = (list: string): readonly string[] => list.split(',').map((name) => name.trim())

it('plays everything of Electron that the program imports', () => {
  const imports = [...textsOf('main').matchAll(/import \{([^}]+)\} from 'electron'/g)].flatMap(([, list = '']) =>
    namesIn(list).filter((name) => name !== '' && !name.startsWith('type ')),
  )
  const played = readFileSync(join(root, 'tests/shell/electronDouble.ts'), 'utf8')
  const given = [...played.matchAll(/export \{([^}]+)\}/g)].flatMap(([, list = '']) => namesIn(list))
  expect(imports).toContain('app')
  // The preload's half is played in the page.
  expect(imports.filter((name) => !given.includes(name))).toEqual(['contextBridge', 'ipcRenderer'])
})

it('tells the program of nothing that Electron does not tell', () => {
  const declared = readFileSync(join(root, 'node_modules/electron/electron.d.ts'), 'utf8')
  const told = [...textsOf('tests/shell/double').matchAll(/\.emit\(\s*'([a-z-]+)'/g)].map(([, name = '']) => name)
  expect(told).toContain('will-quit')
  expect(told.filter((name) => !declared.includes(`event: '${name}'`))).toEqual([])
})
