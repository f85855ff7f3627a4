import type { MenuItemConstructorOptions as Item } from 'electron'
import { describe, expect, it } from 'vitest'
import { createTexts } from '../../main/texts.ts'
import { type MenuDeeds, menuTemplate } from '../../main/window/menuTemplate.ts'
import { screens } from '../../renderer/app/route.ts'
import { shortcuts } from '../../renderer/app/shortcuts.ts'

const { t } = createTexts()

const made = (platform: NodeJS.Platform, recent: readonly string[] = []) => {
  const done: string[] = []
  const deeds: MenuDeeds = {
    act: (action) => done.push(`act ${action}`),
    choose: () => done.push('choose'),
    open: (path) => done.push(`open ${path}`),
    forgetRecent: () => done.push('forget'),
    setTheme: (theme) => done.push(`theme ${theme}`),
  }
  return { menu: menuTemplate(platform, t, { recent, theme: 'dark' }, deeds), done }
}

const within = ({ submenu }: Item): readonly Item[] => (Array.isArray(submenu) ? submenu : [])
const everything = (items: readonly Item[]): readonly Item[] =>
  items.flatMap((item) => [item, ...everything(within(item))])
const press = (item: Item | undefined): void => item?.click?.({} as never, undefined, {} as never)
const labels = (items: readonly Item[]) => items.map(({ label }) => label)
const named = (menu: readonly Item[], label: string): readonly Item[] =>
  within(menu.find((item) => item.label === label) ?? {})

describe.each(['linux', 'win32', 'darwin'] as const)('the native menu on %s', (platform) => {
  const { menu, done } = made(platform, ['/irons/a & b.cwjob'])
  const all = everything(menu)

  it('has a word from the texts for everything but lines', () => {
    for (const { label, type } of all) if (type !== 'separator') expect(label).toMatch(/^[A-Z/a-z][^:]*$/)
  })

  it('gives no key to two things', () => {
    const keys = all.flatMap(({ accelerator }) => accelerator ?? [])
    expect(keys.length).toBeGreaterThan(5)
    expect(new Set(keys).size).toBe(keys.length)
    for (const key of keys) expect(key).toMatch(/^CmdOrCtrl\+/)
  })

  it('goes to every screen there is, and asks the page for nothing it does not know', () => {
    const go = named(menu, 'Go')
    go.forEach(press)
    expect(done).toEqual(Object.keys(screens).map((screen) => `act go.${screen}`))
    done.length = 0
    all.forEach(press)
    // The reports have a word in the menu and no key.
    const known = ['act reports', ...shortcuts.map(({ action }) => `act ${action}`)]
    expect(done.filter((each) => each.startsWith('act ') && !known.includes(each))).toEqual([])
  })
})

it('has the program’s own menu and one of windows on a Mac alone, and the way out where each system has it', () => {
  expect(labels(made('darwin').menu)).toEqual(['Camberwright', 'File', 'Edit', 'Go', 'View', 'Window', 'Help'])
  expect(labels(made('linux').menu)).toEqual(['File', 'Edit', 'Go', 'View', 'Help'])
  expect(named(made('linux').menu, 'File').at(-1)).toMatchObject({ role: 'quit' })
  expect(named(made('darwin').menu, 'File').at(-1)).toMatchObject({ role: 'close' })
  expect(named(made('darwin').menu, 'Camberwright').at(-1)).toMatchObject({ role: 'quit' })
})

it('lists what was opened lately, newest first, and forgets it when told', () => {
  const { menu, done } = made('linux', ['/irons/a & b.cwjob', '/home/rack.zip'])
  const recent = named(named(menu, 'File'), 'Open lately used')
  // One & alone would mark the next letter.
  expect(labels(recent)).toEqual(['a && b.cwjob', 'rack.zip', undefined, 'Forget these'])
  press(recent[1])
  press(recent[3])
  expect(done).toEqual(['open /home/rack.zip', 'forget'])
  expect(named(named(made('linux').menu, 'File'), 'Open lately used')).toEqual([{ label: 'None yet', enabled: false }])
})

it('marks light or dark as it is', () => {
  const { menu, done } = made('linux')
  const radios = named(menu, 'View').filter(({ type }) => type === 'radio')
  expect(radios.map(({ label, checked }) => [label, checked])).toEqual([
    ['Light', false],
    ['Dark', true],
    ['System', false],
  ])
  press(radios[2])
  expect(done).toEqual(['theme system'])
})
