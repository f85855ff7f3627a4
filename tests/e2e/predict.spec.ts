import { expect, expectAxeClean, takePicture, test } from '../support/app.ts'
import { openGrind } from '../support/grindPage.ts'

test('@long a guess comes first, what the program foretells is hidden until the wheel has answered', async ({
  app,
}) => {
  await openGrind(app)
  const foretold = app.locator('.glass-plot .grind-predicted').first()
  await expect(foretold).toBeVisible({ timeout: 30_000 })
  await app.getByRole('button', { name: 'Guess first' }).click()
  await expect(foretold).toBeHidden()
  const field = (name: string) => app.getByRole('spinbutton', { name })
  await field('after so many sweeps').fill('20')
  await field('after so many sweeps').press('Enter')
  await field('left corner back').fill('0.5')
  await field('left corner back').press('Enter')
  await expect(app.getByRole('button', { name: 'Let it run' })).toBeDisabled()
  await field('right corner back').fill('0.5')
  await field('right corner back').press('Enter')
  await app.getByRole('button', { name: 'Let it run' }).click()
  await expect(app.locator('[data-verdict="less"]')).toHaveCount(2)
  await expect(app.getByTestId('sweep')).toHaveText('20')
  await expect(foretold).toBeVisible()
  await takePicture(app, 'grind-predict')
  await expectAxeClean(app)
  await app.getByRole('button', { name: 'step on' }).click()
  await expect(app.getByText('The guess was for sweep 20')).toBeVisible()
  await app.getByRole('button', { name: 'Formulas' }).click()
  await expect(app.locator('[data-formula="yaw"]')).toContainText('0.61°')
  await app.getByRole('button', { name: 'What is simplified' }).click()
  await expect(app.getByRole('heading', { name: 'What is left out' })).toBeVisible()
  await takePicture(app, 'grind-model-page')
  await expectAxeClean(app)
})
