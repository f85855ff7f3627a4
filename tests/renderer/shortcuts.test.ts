import { expect, test } from 'vitest'
import { createTexts } from '../../main/texts.ts'
import { isSingleKey, type Keeps, type Pressed, shortcutFor, shortcuts } from '../../renderer/app/shortcuts.ts'

const press = (key: string, more: Partial<Pressed> = {}): Pressed => ({
  key,
  ctrlKey: false,
  metaKey: false,
  altKey: false,
  shiftKey: false,
  repeat: false,
  ...more,
})
const anything = () => true
const meant = (
  pressed: Pressed,
  keeps: Keeps = 'nothing',
  singleKeys = true,
  can: (action: string) => boolean = anything,
): string | null => shortcutFor(pressed, keeps, singleKeys, can)?.action ?? null

test('every shortcut of the list is what its key does, and no two share a key', () => {
  for (const { action, keys, held } of shortcuts)
    for (const key of keys) expect(meant(press(key, { ctrlKey: held === true }))).toBe(action)
  const all = shortcuts.flatMap(({ keys, held }) => keys.map((key) => `${held ? 'Ctrl ' : ''}${key}`))
  expect(new Set(all).size).toBe(all.length)
})

test('every shortcut and every key with a name has its words', () => {
  const { t } = createTexts()
  for (const { action, keys, where } of shortcuts) {
    expect(t(`shortcuts:action.${action}`)).not.toBe(`action.${action}`)
    expect(t(`shortcuts:where.${where}`)).not.toBe(`where.${where}`)
    const named = keys[0] === ' ' ? 'Space' : (keys[0] as string)
    if (named.length > 1) expect(t(`shortcuts:key.${named}`)).not.toBe(`key.${named}`)
  }
})

test('nothing but help fires while a field is written in or a sheet lies over the window', () => {
  for (const { action, keys, held } of shortcuts)
    for (const key of keys)
      expect(meant(press(key, { ctrlKey: held === true }), 'all')).toBe(action === 'help' ? 'help' : null)
})

test('a slider keeps its arrows but not Space, a button keeps Space but not the arrows', () => {
  expect(meant(press('ArrowRight'), 'moves')).toBeNull()
  expect(meant(press('Home'), 'moves')).toBeNull()
  expect(meant(press(' '), 'moves')).toBe('play')
  expect(meant(press(' '), 'press')).toBeNull()
  expect(meant(press('ArrowRight'), 'press')).toBe('sweepOn')
  expect(meant(press('l'), 'press')).toBe('lift')
  expect([meant(press(' '), 'both'), meant(press('Home'), 'both'), meant(press('l'), 'both')]).toEqual([
    null,
    null,
    'lift',
  ])
})

test('letters and signs can be switched off; the keys with names and those with Ctrl stay', () => {
  for (const { action, keys, held } of shortcuts)
    for (const key of keys) {
      const single = held !== true && key !== ' ' && key.length === 1
      expect(meant(press(key, { ctrlKey: held === true }), 'nothing', false)).toBe(single ? null : action)
    }
  expect(shortcuts.filter(isSingleKey).map(({ action }) => action)).toEqual(expect.arrayContaining(['keys', 'lift']))
})

test('other keys held with it make another key of it, but not what it takes to write a sign', () => {
  expect(meant(press('l', { ctrlKey: true }))).toBeNull()
  expect(meant(press('l', { altKey: true }))).toBeNull()
  expect(meant(press('L', { shiftKey: true }))).toBeNull()
  expect(meant(press('ArrowRight', { shiftKey: true }))).toBeNull()
  expect(meant(press(' ', { shiftKey: true }))).toBeNull()
  expect(meant(press('z', { ctrlKey: true, shiftKey: true }))).toBeNull()
  expect(meant(press('z', { metaKey: true }))).toBe('undo')
  expect(meant(press('?', { shiftKey: true }))).toBe('keys')
  // Caps lock.
  expect(meant(press('L'))).toBe('lift')
})

test('a key held down goes on only where that is of use, and does nothing where nobody can do it', () => {
  expect(meant(press('ArrowRight', { repeat: true }))).toBe('sweepOn')
  expect(meant(press(' ', { repeat: true }))).toBeNull()
  expect(meant(press('l'), 'nothing', true, (action) => action !== 'lift')).toBeNull()
})
