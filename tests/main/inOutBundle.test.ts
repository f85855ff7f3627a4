import { type Zippable, zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { readBundle, writeBundle } from '../../main/inOut/bundle.ts'
import { photoPath } from '../../main/photos/photoFiles.ts'
import { hashOfPicture, pictureOf } from './randomRack.ts'
import { codesOf } from './support.ts'

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text)
const path = photoPath(hashOfPicture(1), 'image/png')
const codes = (files: Zippable | Uint8Array): readonly string[] =>
  codesOf(readBundle(files instanceof Uint8Array ? files : zipSync(files)))

/** A zip whose directory calls a file otherwise than it was packed; both names are as long. */
const renamed = (zip: Uint8Array, from: string, to: string): Uint8Array =>
  new Uint8Array(Buffer.from(Buffer.from(zip).toString('latin1').replaceAll(from, to), 'latin1'))

describe('a bundle', () => {
  it('gives back its document and pictures, and is the same each time', () => {
    const zip = writeBundle('{}', new Map([[path, pictureOf(1)]]))
    expect(readBundle(zip)).toEqual({
      ok: true,
      value: { document: bytes('{}'), photos: new Map([[hashOfPicture(1), pictureOf(1)]]) },
    })
    expect(writeBundle('{}', new Map([[path, pictureOf(1)]]))).toEqual(zip)
  })

  it.each([
    '../rack.json',
    '/rack.json',
    'C:\\rack.json',
    'photos/../../x.png',
    `photos/../${path}`,
    `photos/${hashOfPicture(1)}.exe`,
    'photos/',
    'rack.json/',
    'link',
  ])('is refused for a file called %s', (name) => {
    expect(codes({ 'rack.json': bytes('{}'), [name]: bytes('x') })).toEqual(['bundleStranger'])
  })

  it('is refused for a file called as what every object has', () => {
    const zip = zipSync({ 'rack.json': bytes('{}'), xxxxxxxxx: bytes('x') })
    expect(codes(renamed(zip, 'xxxxxxxxx', '__proto__'))).toEqual(['bundleStranger'])
  })

  it('is refused for a link in place of a picture, which is only its bytes here and not the picture', () => {
    const link: Zippable = {
      'rack.json': bytes('{}'),
      [path]: [bytes('/etc/passwd'), { os: 3, attrs: 0o120777 << 16 }],
    }
    expect(codes(link)).toEqual(['photoWrong'])
  })

  it.each([
    ['another picture than its name says', pictureOf(2)],
    ['no picture', bytes('<svg onload="alert(1)"/>')],
    ['nothing', new Uint8Array()],
  ])('is refused where a picture is %s', (_, content) => {
    expect(codes({ 'rack.json': bytes('{}'), [path]: content })).toEqual(['photoWrong'])
  })

  it('is refused where it would swell to many times its size', () => {
    expect(codes({ 'rack.json': new Uint8Array(20_000_000) })).toEqual(['bundleSwells'])
  })

  it('never unpacks more than it said, whatever it holds', () => {
    const zip = zipSync({ 'rack.json': bytes('{"form":"x"}'.repeat(400)) })
    // The directory claims a single byte.
    const view = new DataView(zip.buffer)
    const directory = Buffer.from(zip).indexOf(Buffer.from([0x50, 0x4b, 1, 2]))
    view.setUint32(directory + 24, 1, true)
    const opened = readBundle(zip)
    expect(opened.ok ? opened.value.document.length : 0).toBeLessThanOrEqual(1)
  })

  it('is refused where a name comes twice, the document is missing, or it is no zip', () => {
    const two = zipSync({ 'rack.json': bytes('{}'), 'rack.jsoN': bytes('{}') })
    expect(codes(renamed(two, 'rack.jsoN', 'rack.json'))).toEqual(['bundleTwice'])
    expect(codes({ [path]: pictureOf(1) })).toEqual(['bundleEmpty'])
    expect(codes(bytes('PK nothing'))).toEqual(['bundleDamaged'])
    const whole = writeBundle('{"a":1}'.repeat(100), new Map())
    for (let end = 4; end < whole.length; end += 7) expect(codes(whole.subarray(0, end))).toEqual(['bundleDamaged'])
  })
})
