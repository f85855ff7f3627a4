import { readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from '@playwright/test'
import { budgets } from '../budgets.ts'

const built = join(import.meta.dirname, '..', '..', 'out', 'renderer')

/** Scripts that the page loads by itself, and those they cannot start without. */
const firstScripts = (): readonly string[] => {
  const page = readFileSync(join(built, 'index.html'), 'utf8')
  const found = new Set(
    Array.from(page.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.js)"/g), ([, path]) => path as string),
  )
  for (const path of found)
    for (const [, name] of readFileSync(join(built, path), 'utf8').matchAll(/(?:from|import)\s*"\.\/([^"]+\.js)"/g))
      found.add(`assets/${name}`)
  return [...found]
}

test('the first picture waits neither for the moving model nor for anything that writes files', () => {
  const scripts = firstScripts()
  const text = scripts.map((path) => readFileSync(join(built, path), 'utf8')).join('\n')
  expect(scripts.length).toBeGreaterThan(0)
  expect(text).toContain('createRoot')
  // Names that the libraries keep when they are made small.
  for (const name of ['WebGLRenderer', 'GLTFExporter', 'STLExporter', 'VideoEncoder']) expect(text).not.toContain(name)
  const kilobytes = scripts.reduce((sum, path) => sum + statSync(join(built, path)).size, 0) / 1000
  test
    .info()
    .annotations.push({ type: 'first scripts', description: `${kilobytes.toFixed(0)} kB in ${scripts.length}` })
  expect(kilobytes).toBeLessThan(budgets.firstScriptsKb)
})
