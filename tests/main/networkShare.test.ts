import { describe, expect, it } from 'vitest'
import { networkShare, shareOf } from '../../main/database/networkShare.ts'
import { temporaryFolder } from './support.ts'

/** Lists as the systems write them, names invented. */
const linux = `
proc /proc proc rw,nosuid,nodev,noexec,relatime 0 0
/dev/nvme0n1p2 / ext4 rw,relatime,errors=remount-ro 0 0
tmpfs /run tmpfs rw,nosuid,nodev,size=1600000k,mode=755 0 0
/dev/sdb1 /media/wren/stick fuseblk rw,nosuid,nodev,relatime,user_id=0,group_id=0,blksize=4096 0 0
systemd-1 /mnt/auto autofs rw,relatime,fd=56,pgrp=1,timeout=0,minproto=5,maxproto=5,direct 0 0
shelf:/export/auto /mnt/auto nfs4 rw,relatime,vers=4.2,rsize=1048576,addr=192.0.2.7 0 0
shelf:/export /mnt/shop nfs rw,relatime,vers=3,addr=192.0.2.7 0 0
//shelf/tool\\040store /mnt/tool\\040store cifs rw,relatime,vers=3.1.1,username=wren,addr=192.0.2.7 0 0
wren@shelf:/home/wren /home/wren/far fuse.sshfs rw,nosuid,nodev,relatime,user_id=1000,group_id=1000 0 0
keep:racks /home/wren/cloud fuse.rclone rw,nosuid,nodev,relatime,user_id=1000,group_id=1000 0 0
https://dav.example/wren/ /home/wren/dav fuse rw,nosuid,nodev,relatime,user_id=1000,group_id=1000 0 0
gvfsd-fuse /run/user/1000/gvfs fuse.gvfsd-fuse rw,nosuid,nodev,relatime,user_id=1000,group_id=1000 0 0
/home/wren/.locked /home/wren/open fuse.gocryptfs rw,nosuid,nodev,relatime,user_id=1000,group_id=1000 0 0
/disk1:/disk2 /pool fuse.mergerfs rw,relatime,user_id=0,group_id=0 0 0
portal /run/user/1000/doc fuse.portal rw,nosuid,nodev,relatime,user_id=1000,group_id=1000 0 0
drvfs /mnt/c 9p rw,noatime,dirsync,aname=drvfs;path=C:\\\\;uid=1000 0 0
tmpfs /mnt/hidden tmpfs rw 0 0
shelf:/export /mnt/hidden nfs rw 0 0
/dev/sdc1 /mnt/shop/local ext4 rw,relatime 0 0
`

const mac = `
/dev/disk3s1s1 on / (apfs, sealed, local, read-only, journaled)
devfs on /dev (devfs, local, nobrowse)
/dev/disk3s5 on /System/Volumes/Data (apfs, local, journaled, nobrowse, protect, root data)
map auto_home on /System/Volumes/Data/home (autofs, automounted, nobrowse)
//wren@shelf._smb._tcp.local/shop on /Volumes/shop (smbfs, nodev, nosuid, mounted by wren)
afp_0TQCV10QsPgy0TShVK on /Volumes/old store (afpfs, nodev, nosuid, mounted by wren)
shelf:/export on /private/nfs (nfs, nodev, nosuid, mounted by wren)
https://dav.example/wren/ on /Volumes/wren (webdav, nodev, noexec, nosuid, mounted by wren)
wren@shelf:/home/wren on /Users/wren/far (macfuse, nodev, nosuid, synchronous, mounted by wren)
/dev/disk4s1 on /Volumes/stick (2) (exfat, local, nodev, nosuid, noowners)
`

const windows = `
New connections will be remembered.\r
\r
\r
Status       Local     Remote                    Network\r
\r
-------------------------------------------------------------------------------\r
OK           Z:        \\\\shelf\\shop              Microsoft Windows Network\r
Disconnected Y:        \\\\shelf\\a far longer name of a share\r
                                                Microsoft Windows Network\r
                       \\\\shelf\\IPC$              Microsoft Windows Network\r
The command completed successfully.\r
\r
`

const german = windows.replace('Disconnected Y:', 'Nicht verfügb W:')

describe.each([
  ['linux', '/home/wren/racks', null],
  ['linux', '/media/wren/stick', null],
  ['linux', '/mnt/auto/racks', 'NFS'],
  ['linux', '/mnt/shop', 'NFS'],
  ['linux', '/mnt/shopping', null],
  ['linux', '/mnt/shop/local/racks', null],
  ['linux', '/mnt/tool store/racks', 'SMB'],
  ['linux', '/home/wren/far', 'SSH'],
  ['linux', '/home/wren/cloud/racks', 'rclone'],
  ['linux', '/home/wren/dav', 'fuse'],
  ['linux', '/run/user/1000/gvfs/smb-share:server=shelf', 'gvfsd-fuse'],
  ['linux', '/home/wren/open', null],
  ['linux', '/pool/racks', null],
  ['linux', '/run/user/1000/doc', null],
  ['linux', '/mnt/c/racks', '9P'],
  ['linux', '/mnt/hidden', 'NFS'],
  ['darwin', '/Users/wren/racks', null],
  ['darwin', '/System/Volumes/Data/home', null],
  ['darwin', '/Volumes/shop/racks', 'SMB'],
  ['darwin', '/Volumes/old store', 'AFP'],
  ['darwin', '/private/nfs/racks', 'NFS'],
  ['darwin', '/Volumes/wren', 'WebDAV'],
  ['darwin', '/Users/wren/far', 'macfuse'],
  ['darwin', '/Volumes/stick (2)/racks', null],
  ['win32', '\\\\shelf\\shop', 'SMB'],
  ['win32', '//shelf/shop', 'SMB'],
  ['win32', '\\\\?\\UNC\\shelf\\shop', 'SMB'],
  ['win32', '\\\\?\\C:\\racks', null],
  ['win32', 'C:\\Users\\wren', null],
  ['win32', 'Z:\\racks', 'SMB'],
  ['win32', 'z:\\racks', 'SMB'],
  ['win32', 'Y:\\', 'SMB'],
  ['win32', 'X:\\racks', null],
] as const)('on %s a folder at %s', (platform, path, share) => {
  const listed = { linux, darwin: mac, win32: windows }[platform]
  it(`lies on ${share ?? 'this machine'}`, () => expect(shareOf({ platform, path, listed })).toBe(share))
})

it('another language lists mapped letters as well', () => {
  const at = (path: string) => shareOf({ platform: 'win32', path, listed: german })
  expect([at('W:\\racks'), at('Z:\\racks'), at('Y:\\racks')]).toEqual(['SMB', 'SMB', null])
})

it('where nothing is listed nothing is warned of', () => {
  for (const platform of ['linux', 'darwin', 'win32', 'freebsd'] as const)
    expect(shareOf({ platform, path: '/mnt/shop', listed: '' })).toBeNull()
})

it('a folder of this machine lies on none', () => {
  const place = temporaryFolder()
  expect(networkShare(place.folder)).toBeNull()
  place.remove()
})
