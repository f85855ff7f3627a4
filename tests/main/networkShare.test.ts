import { expect, it } from 'vitest'
import { networkShare, shareOf } from '../../main/database/networkShare.ts'
import { temporaryFolder } from './support.ts'

it.each([
  ['linux', '/mnt/shop', 0x6969, 'NFS'],
  ['linux', '/mnt/shop', 0xff534d42, 'CIFS'],
  ['linux', '/mnt/shop', 0xff534d42 | 0, 'CIFS'],
  ['linux', '/home/shop', 0xef53, null],
  ['linux', '/home/shop', null, null],
  ['darwin', '/Users/shop', 0x6969, null],
  ['win32', '\\\\server\\shop', null, 'SMB'],
  ['win32', '//server/shop', null, 'SMB'],
  ['win32', '\\\\?\\C:\\shop', null, null],
  ['win32', 'C:\\Users\\shop', null, null],
] as const)('on %s a folder %s of file system %s lies on %s', (platform, path, type, share) => {
  expect(shareOf({ platform, path, type })).toBe(share)
})

it('a folder of this machine lies on none', () => {
  const place = temporaryFolder()
  expect(networkShare(place.folder)).toBeNull()
  place.remove()
})
