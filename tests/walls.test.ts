import { spawnSync } from 'node:child_process'
import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join, resolve } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

const root = join(import.meta.dirname, '..')
const geometry = join(root, 'geometry')

/** An import in a file that is not there: `refused` where the walls of tests/biome.json forbid it. */
interface Planted {
  readonly file: string
  readonly from: string
  readonly refused: boolean
}

const planted = (file: string, refused: readonly string[], allowed: readonly string[]): readonly Planted[] => [
  ...refused.map((from) => ({ file, from, refused: true })),
  ...allowed.map((from) => ({ file, from, refused: false })),
]

const plantings: readonly Planted[] = [
  ...planted(
    'geometry/planted.ts',
    [
      ...[
        'react',
        'react/jsx-runtime',
        'react-dom',
        'three',
        'three/addons/controls/OrbitControls.js',
        '@react-three/fiber',
      ],
      ...['electron', 'node:fs', 'fs', 'node:worker_threads', 'kysely', 'better-sqlite3', 'i18next', 'zustand'],
      ...['../main/router.ts', '../main/contract/calls.ts', '../renderer/app/store.ts', '../assets/texts/en/card.json'],
    ],
    ['./tolerances.ts', 'zod'],
  ),
  ...planted(
    'geometry/lesson/planted.ts',
    ['react', 'node:fs', '../../main/router.ts', '../../renderer/app/store.ts', '../../assets/texts/en/card.json'],
    ['./lesson.ts', '../job.ts', 'zod'],
  ),
  ...planted(
    'main/contract/planted.ts',
    ['node:fs', 'electron', 'kysely', 'better-sqlite3', '../database/open.ts', '../router.ts', 'react', 'three'],
    ['./calls.ts', '../../geometry/job.ts', '../../assets/texts/en/card.json', 'zod', 'i18next'],
  ),
  ...planted(
    'main/rack/planted.ts',
    ['react', 'react-dom/client', 'three', '@react-three/fiber', 'zustand', '../../renderer/app/store.ts'],
    ['node:fs', 'electron', 'kysely', '../contract/calls.ts', '../../geometry/job.ts'],
  ),
  ...planted(
    'renderer/app/planted.tsx',
    ['node:fs', 'electron', 'better-sqlite3', 'kysely', 'pdf-lib', '../../main/router.ts', '../../main/rack/tool.ts'],
    ['react', 'three', '../../main/contract/calls.ts', '../../geometry/job.ts', '../ui/texts.tsx'],
  ),
]

interface LintReport {
  readonly diagnostics: readonly { readonly category: string; readonly location: { readonly path: unknown } }[]
}

/** One file a planting, so that each is answered for by itself. */
const placeOf = ({ file }: Planted, index: number): string => file.replace('planted', `planted${index}`)

const plant = (folder: string): void =>
  plantings.forEach((planting, index) => {
    const path = join(folder, placeOf(planting, index))
    mkdirSync(dirname(path), { recursive: true })
    writeFileSync(path, `import used from '${planting.from}'\n\nexport const again = used\n`)
  })

/** @returns the planted files that Biome refuses for their import */
const refusedFiles = (folder: string): readonly string[] => {
  const biome = join(root, 'node_modules', '@biomejs', 'biome', 'bin', 'biome')
  const args = [biome, 'lint', '--config-path=tests', '--reporter=json', '--max-diagnostics=none', '.']
  const { stdout } = spawnSync(process.execPath, args, { cwd: folder, encoding: 'utf8' })
  const { diagnostics } = JSON.parse(stdout) as LintReport
  return diagnostics
    .filter(({ category }) => category === 'lint/style/noRestrictedImports')
    .map(({ location }) => String(location.path))
}

describe('the walls between the parts', () => {
  const folder = mkdtempSync(join(tmpdir(), 'camberwright-walls-'))
  let refused: readonly string[] = []

  beforeAll(() => {
    mkdirSync(join(folder, 'tests'))
    copyFileSync(join(root, 'tests', 'biome.json'), join(folder, 'tests', 'biome.json'))
    spawnSync('git', ['init', '--quiet'], { cwd: folder })
    plant(folder)
    refused = refusedFiles(folder)
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  it.each(plantings.map((planting, index) => ({ ...planting, index })))(
    '$file importing $from is refused: $refused',
    (planting) => {
      expect(refused.includes(placeOf(planting, planting.index))).toBe(planting.refused)
    },
  )
})

const importsOf = (path: string): readonly string[] =>
  Array.from(
    readFileSync(path, 'utf8').matchAll(
      /(?:^|\n)\s*(?:import|export)\s[^'"]*?from\s*['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)/g,
    ),
    ([, plain, dynamic]) => plain ?? dynamic ?? '',
  )

describe('geometry/, followed import by import', () => {
  const files = readdirSync(geometry, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'))

  it.each(files)('%s reaches its own folder and zod, nothing else', (name) => {
    const path = join(geometry, name)
    const outside = importsOf(path).filter(
      (from) => from !== 'zod' && !(from.startsWith('.') && resolve(dirname(path), from).startsWith(`${geometry}/`)),
    )
    expect(outside).toEqual([])
  })

  it('is read at all', () => {
    expect(files.flatMap((name) => importsOf(join(geometry, name))).length).toBeGreaterThan(files.length)
  })
})
