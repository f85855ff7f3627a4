import { expect, expectGoodLooks, test } from '../support/app.ts'

/** A report takes a second or two on a slow machine. */
const SOLVED = { timeout: 30_000 }

test('the secondary bevel is drawn, strokes keep or flatten the curve, and a colour means something for the steel', async ({
  app,
}) => {
  await app.getByRole('row', { name: /Smoothing iron, fine/ }).click()
  await app.getByRole('link', { name: 'Measure this iron' }).click()
  await app.getByRole('link', { name: 'Hone', exact: true }).click()
  const bevel = app.getByRole('region', { name: 'The secondary bevel' })
  await expect(bevel).toContainText(/One honing leaves a flat 0\.\d\d\smm wide; after \d+ honings/, SOLVED)
  const strokes = app.getByRole('region', { name: 'Strokes that keep the curve' })
  await expect(strokes).toContainText('18 strokes keep the curve: 0.07')
  await expect(app.getByRole('img', { name: 'The tip of the bevel, magnified' })).toBeVisible()
  await expect(strokes).toContainText(/before, 0\.07.*after, 0\.07.*wanted, 0\.07/s)
  await expectGoodLooks(app, 'honing')
  const type = async (name: string, text: string) => {
    await app.getByLabel(name, { exact: true }).fill(text)
    await app.getByLabel(name, { exact: true }).press('Enter')
  }
  await type('strokes at each corner', '4.5')
  await expect(strokes).toContainText('This must be a whole number.')
  await type('strokes at each corner', '0')
  await type('at each halfway', '0')
  await type('in the middle', '12')
  await expect(strokes).toContainText('12 strokes flatten the curve')
  await expect(bevel).not.toContainText('of clearance lets the wood rub')
  await type('honed bevel', '36')
  await expect(bevel).toContainText('Less than 10.0° of clearance lets the wood rub')
  await type('honed bevel', '30')
  await type('each honing sets the edge back by', '1')
  await expect(bevel).toContainText('One honing takes the whole hollow')
  await expect(bevel.getByRole('img', { name: /no hollow left/ })).toBeVisible()
  await type('honed bevel', '25')
  await expect(bevel).toContainText('the stone lies on the heel as well')
  const heat = app.getByRole('region', { name: 'Heat' })
  await expect(heat).toContainText('Read from the words in the rack, “carbon steel”')
  await heat.getByLabel('Steel').selectOption({ label: 'not known' })
  await expect(heat.getByRole('listitem').first()).not.toContainText('temper')
  await heat.getByLabel('Steel').selectOption({ label: 'high-speed (M2)' })
  await expect(heat.getByRole('listitem').filter({ hasText: 'full purple' })).toContainText('below its temper')
})

test('a straight edge is called straight, and says what the strokes would make of it', async ({ app }) => {
  await app.getByRole('row', { name: /Shooting iron/ }).click()
  await app.getByRole('link', { name: 'Measure this iron' }).click()
  await app.getByRole('link', { name: 'Hone', exact: true }).click()
  const strokes = app.getByRole('region', { name: 'Strokes that keep the curve' })
  await expect(strokes).toContainText('This edge is straight as far as a leaf tells', SOLVED)
  await expect(strokes).toContainText('these 18 strokes would make 0.01')
  await expect(strokes).not.toContainText('keep the curve:')
})
