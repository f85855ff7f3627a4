import { readFile } from 'node:fs/promises'
import { expect, expectAxeClean, takePicture, test } from '../support/app.ts'
import { openGrind } from '../support/grindPage.ts'

test('a job is kept as a file, opened again beside the own one, and taken over', async ({ app }) => {
  await openGrind(app)
  await app.getByRole('button', { name: 'Job file' }).click()
  const downloading = app.waitForEvent('download')
  await app.getByRole('button', { name: 'Save this job' }).click()
  const file = await downloading
  expect(file.suggestedFilename()).toMatch(/^06 .*\.cwjob$/)
  const job = JSON.parse(await readFile(await file.path(), 'utf8'))
  expect(job.motion.stopTurnsLeft).toBe(1)

  const pick = app.getByLabel('Open a job file')
  const opens = (text: string) =>
    pick.setInputFiles({ name: 'other.job.json', mimeType: 'application/json', buffer: Buffer.from(text) })
  await opens('{"version": 1, "blade": {"widthMm": -3}}')
  await expect(app.getByRole('alert')).toContainText('other.job.json cannot be opened')
  await takePicture(app, 'grind-job-file-refused')
  await expectAxeClean(app)
  job.motion.stopTurnsLeft = 1.5
  job.motion.sweeps = 40
  await opens(JSON.stringify(job))
  await expect(app.getByText('This shows the job of the file other.job.json')).toBeVisible()
  await expect(app.getByText('of 40 sweeps')).toBeVisible()
  await app.getByRole('button', { name: /Take its aim and motion over/ }).click()
  await expect(app.getByText('This shows the job of the file other.job.json')).toBeHidden()
  await expect(app.getByRole('spinbutton', { name: 'turns, left' })).toHaveValue('1.5')
  await app.getByRole('button', { name: 'Undo' }).first().click()
  await expect(app.getByText('of 120 sweeps')).toBeVisible()
})
