import type { Session } from 'electron'
import { expect, it } from 'vitest'
import { guardPermissions, keepOffNetwork } from '../../main/window/guards.ts'

type Check = (contents: null, permission: string, origin: string, details: object) => boolean
type Ask = (contents: null, permission: string, answer: (granted: boolean) => void, details: object) => void

const PAGE = { isMainFrame: true, requestingUrl: 'camberwright://app/index.html' }

/** @param saysYes what the user answers when asked about the camera */
const guarded = (saysYes: boolean) => {
  let check: Check = () => true
  let ask: Ask = (_contents, _permission, answer) => answer(true)
  let asked = 0
  const session = {
    setPermissionCheckHandler: (handler: Check) => {
      check = handler
    },
    setPermissionRequestHandler: (handler: Ask) => {
      ask = handler
    },
    setDevicePermissionHandler: () => undefined,
  } as unknown as Session
  guardPermissions(session, async () => {
    asked += 1
    return saysYes
  })
  return {
    request: (permission: string, details: object) =>
      new Promise<boolean>((answer) => ask(null, permission, answer, { ...PAGE, ...details })),
    check: (permission: string, details: object, origin = '') => check(null, permission, origin, details),
    asked: () => asked,
  }
}

const all = [true, true] as const
const none = [false, false] as const

it.each([
  ['screen-wake-lock', {}, {}, all],
  ['media', { mediaTypes: ['video'] }, { mediaType: 'video' }, all],
  ['media', { mediaTypes: ['audio'] }, { mediaType: 'audio' }, none],
  ['media', { mediaTypes: ['video', 'audio'] }, { mediaType: 'unknown' }, none],
  ['media', { mediaTypes: [] }, {}, none],
  ['media', {}, {}, none],
  ['display-capture', { mediaTypes: ['video'] }, { mediaType: 'video' }, none],
  ['geolocation', {}, {}, none],
] as const)(
  'the page that asks for %s, %o, is answered as the rules say',
  async (permission, asked, checked, answers) => {
    const guards = guarded(true)
    expect([await guards.request(permission, asked), guards.check(permission, { ...PAGE, ...checked })]).toEqual(
      answers,
    )
  },
)

it('the user is asked about the camera, and about nothing else', async () => {
  const guards = guarded(false)
  expect(await guards.request('media', { mediaTypes: ['video'] })).toBe(false)
  expect(guards.asked()).toBe(1)
  await guards.request('screen-wake-lock', {})
  await guards.request('notifications', {})
  await guards.request('media', { mediaTypes: ['audio'] })
  expect(guards.asked()).toBe(1)
})

it.each([
  [{ isMainFrame: false }],
  [{ requestingUrl: 'https://elsewhere.invalid/' }],
  [{ requestingUrl: 'camberwright://app.elsewhere/' }],
  [{ requestingUrl: undefined }],
])('whoever is not the top frame of the program’s page is granted nothing, and nobody is asked: %o', async (other) => {
  const guards = guarded(true)
  expect(await guards.request('screen-wake-lock', other)).toBe(false)
  expect(await guards.request('media', { mediaTypes: ['video'], ...other })).toBe(false)
  expect(guards.check('screen-wake-lock', { ...PAGE, ...other }, 'https://elsewhere.invalid')).toBe(false)
  expect(guards.asked()).toBe(0)
})

it('a look-up that tells its origin alone is known by it', () => {
  expect(guarded(true).check('screen-wake-lock', {}, 'camberwright://app/')).toBe(true)
  expect(guarded(true).check('screen-wake-lock', {}, 'camberwright://app')).toBe(true)
  expect(guarded(true).check('screen-wake-lock', {}, 'https://app')).toBe(false)
})

it.each([
  ['camberwright://app/index.html', false],
  ['blob:camberwright://app/0f9a', false],
  ['data:image/png;base64,AA', false],
  ['https://elsewhere.invalid/', true],
  ['http://127.0.0.1/', true],
  ['camberwright://other/', true],
  ['camberwright://app.other/', true],
  ['blob:https://elsewhere.invalid/0f9a', true],
  ['file:///etc/passwd', true],
  ['ws://elsewhere.invalid/', true],
])('what is fetched from %s is stopped: %s', (url, stopped) => {
  let cancelled: boolean | undefined
  type Listener = (details: { url: string }, answer: (response: { cancel?: boolean }) => void) => void
  const onBeforeRequest = (listener: Listener) => listener({ url }, ({ cancel }) => (cancelled = cancel))
  keepOffNetwork({ webRequest: { onBeforeRequest } } as unknown as Session)
  expect(cancelled).toBe(stopped)
})
