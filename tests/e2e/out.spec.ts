import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from '@playwright/test'
import { expect, expectGoodLooks, test } from '../support/app.ts'
import { openGrind, seekSweep } from '../support/grindPage.ts'

/** The program's own reader of films, in the form that Node takes. */
const { ALL_FORMATS, BufferSource, EncodedPacketSink, Input }: typeof import('mediabunny') = createRequire(
  import.meta.url,
)('mediabunny')

/** Goes to Grind with the low-angle jack iron, to a sweep where something is ground, and opens what saves. */
const openSave = async (app: Page): Promise<void> => {
  await openGrind(app)
  await seekSweep(app, 20)
  await app.getByRole('button', { name: 'Save', exact: true }).click()
  await expect(app.getByRole('heading', { name: 'Clip' })).toBeVisible()
}

const key = (app: Page, name: string | RegExp) => app.getByRole('button', { name })

/** Presses a key that saves. @returns the file's name and bytes */
const saved = async (app: Page, name: string | RegExp): Promise<{ name: string; bytes: Buffer }> => {
  const given = app.waitForEvent('download')
  await key(app, name).click()
  const download = await given
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) }
}

const type = async (app: Page, name: string, text: string): Promise<void> => {
  const field = app.getByRole('spinbutton', { name, exact: true })
  await field.fill(text)
  await field.press('Enter')
}

/** Share of a picture's points that are not of the colour of its corner. */
const drawnShare = (app: Page, png: Buffer): Promise<number> =>
  app.evaluate(async (base64) => {
    const image = new Image()
    image.src = `data:image/png;base64,${base64}`
    await image.decode()
    const canvas = document.createElement('canvas')
    canvas.width = image.naturalWidth
    canvas.height = image.naturalHeight
    const context = canvas.getContext('2d')
    context?.drawImage(image, 0, 0)
    const points = new Uint32Array(context?.getImageData(0, 0, canvas.width, canvas.height).data.buffer ?? [])
    return points.filter((point) => point !== points[0]).length / points.length
  }, png.toString('base64'))

/** Width and height as they stand in a PNG's first chunk. */
const pngSize = (png: Buffer): [number, number] => {
  expect(png.subarray(1, 4).toString()).toBe('PNG')
  return [png.readUInt32BE(16), png.readUInt32BE(20)]
}

test('@long a picture of a view has the size chosen, and what is seen in it', async ({ app }) => {
  await openSave(app)
  await app.getByText('by width', { exact: true }).click()
  await type(app, 'width of the picture', '733')
  for (const [view, share] of [
    ['Glass', 0.3],
    ['Bevel', 0.2],
    ['Model', 0.15],
  ] as const) {
    await app.getByLabel('view', { exact: true }).selectOption(view)
    const { name, bytes } = await saved(app, 'Save the picture')
    expect(name).toBe(`06-${view.toLowerCase()}.png`)
    const [width, height] = pngSize(bytes)
    const element = view === 'Model' ? '.grind-stage' : `.grind-view:has(h2:text-is("${view}"))`
    const box = await app.locator(element).boundingBox()
    expect(width).toBe(733)
    // Twelve pixels of the screen are left free all round.
    expect(height).toBeCloseTo((733 * ((box?.height ?? 0) + 24)) / ((box?.width ?? 0) + 24), -0.5)
    expect(await drawnShare(app, bytes), view).toBeGreaterThan(share)
  }
  await expect(app.getByTestId('status')).toHaveText('Handed over to be saved: 06-model.png')
})

test('@long the ground blade and the curve on paper are saved, each as what it is', async ({ app }) => {
  await openSave(app)
  const starts = async (name: string, file: RegExp, mark: string): Promise<Buffer> => {
    const got = await saved(app, name)
    expect(got.name).toMatch(file)
    expect(got.bytes.subarray(0, mark.length).toString('latin1')).toBe(mark)
    return got.bytes
  }
  const glb = await starts('Save as glTF', /^06-sweep-20-00\.glb$/, 'glTF')
  expect(glb.readUInt32LE(8)).toBe(glb.length)
  const stl = await starts('Save as STL', /\.stl$/, 'Camberwright blade, mm')
  expect(stl.length).toBe(84 + 50 * stl.readUInt32LE(80))
  await starts('Save as PDF', /^edge-template-06\.pdf$/, '%PDF-')
  await starts('Save as DXF', /\.dxf$/, '999\r\nEdge template 1 : 1, 06')
  await app.getByText('with the predicted edge').click()
  const svg = await starts('Save as SVG', /\.svg$/, '<?xml version="1.0"')
  expect(svg.toString()).toContain('predicted after 120 sweeps')
  await expectGoodLooks(app, 'grind-save')
  await app.setViewportSize({ width: 640, height: 800 })
  const panel = await app.locator('.out-panel').boundingBox()
  expect((panel?.x ?? 0) + (panel?.width ?? 0)).toBeLessThanOrEqual(640)
})

test('@long a clip has a picture for every moment; one that is stopped leaves nothing; a window without an encoder says so', async ({
  app,
}) => {
  await openSave(app)
  await type(app, 'pictures a second', '12')
  await type(app, 'width of the clip', '320')
  const { name, bytes } = await saved(app, 'Save the clip, 12 pictures')
  expect(name).toBe('06-model-sweeps-20-21.webm')
  const film = new Input({ formats: ALL_FORMATS, source: new BufferSource(bytes) })
  const track = await film.getPrimaryVideoTrack()
  if (!track) throw new Error('no pictures in the clip')
  const times: number[] = []
  for await (const packet of new EncodedPacketSink(track).packets()) times.push(packet.timestamp)
  // The form counts time in thousandths of a second.
  expect(times).toEqual(Array.from({ length: 12 }, (_, i) => expect.closeTo(i / 12, 2)))
  expect(track.displayWidth).toBe(320)
  await expect(app.getByRole('slider', { name: 'Moment of the grind' })).toHaveAttribute('aria-valuetext', /^sweep 20 /)

  const kept: string[] = []
  app.on('download', (download) => kept.push(download.suggestedFilename()))
  await type(app, 'to sweep', '40')
  await key(app, /^Save the clip/).click()
  await expect(app.getByText(/^Drawing, [1-9]\d* %/)).toBeVisible()
  await key(app, 'Stop making the clip').click()
  await expect(app.getByTestId('status')).toHaveText('The clip was stopped; nothing was saved.')
  await expect(key(app, 'Save the clip, 240 pictures')).toBeVisible()
  expect(kept).toEqual([])

  await type(app, 'to sweep', '20')
  await key(app, /^Save the clip/).click()
  await expect(app.getByRole('alert')).toHaveText('The clip ends before it begins. Let it end at a later sweep.')

  await app.evaluate(() => Reflect.deleteProperty(window, 'VideoEncoder'))
  for (let press = 0; press < 2; press++) await app.getByRole('button', { name: 'Save', exact: true }).click()
  await expect(app.getByText(/no video encoder.*save a picture/)).toBeVisible()
  await expect(key(app, /^Save the clip/)).toHaveCount(0)
})
