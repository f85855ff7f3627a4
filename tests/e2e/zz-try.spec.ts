import { expectAxeClean, test, testInBothThemes, expect } from '../support/app.ts'
testInBothThemes('opens', async (app, theme) => {
  await app.waitForTimeout(1500)
  await app.screenshot({ path: `/tmp/shot-${theme}.png` })
  await expect(app.getByRole('main')).toBeVisible()
  await expectAxeClean(app)
})
