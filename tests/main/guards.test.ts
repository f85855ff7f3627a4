import type { Session } from 'electron'
import { expect, it } from 'vitest'
import { denyPermissions } from '../../main/window/guards.ts'

type Check = (contents: null, permission: string, origin: string, details: object) => boolean
type Ask = (contents: null, permission: string, answer: (granted: boolean) => void, details: object) => void

const guarded = () => {
  let check: Check = () => true
  let ask: Ask = (_contents, _permission, answer) => answer(true)
  denyPermissions({
    setPermissionCheckHandler: (handler: Check) => {
      check = handler
    },
    setPermissionRequestHandler: (handler: Ask) => {
      ask = handler
    },
    setDevicePermissionHandler: () => undefined,
  } as unknown as Session)
  return (permission: string, asked: object, checked: object): readonly [boolean, boolean] => {
    let granted = false
    ask(null, permission, (answer) => (granted = answer), asked)
    return [granted, check(null, permission, 'camberwright://app', checked)]
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
] as const)('the page that asks for %s, %o, is answered as the rules say', (permission, asked, checked, answers) => {
  expect(guarded()(permission, asked, checked)).toEqual(answers)
})
