import { lessonFiles, lessons, lessonText } from '../lessons/support.ts'
import { expect, expectGoodLooks, test } from '../support/app.ts'
import { answerStep, openLesson } from '../support/lessonWalk.ts'

const ink = lessons.find(({ id }) => id === 'ink') as (typeof lessons)[number]
const inkText = lessonText(lessonFiles.find((file) => file.includes('ink')) as string)

test('a teacher notes who was shown the wheel, sets a lesson and sees how far it is; it goes on where it was left', async ({
  app,
}) => {
  await app.getByRole('link', { name: 'Teach', exact: true }).click()
  await app.getByRole('link', { name: 'Who has learnt what' }).click()
  await app.getByRole('radio', { name: /Hanno Vell/ }).check()
  await app.getByLabel('Shown by').fill('Tilda Quorn')
  await app.getByRole('button', { name: /Note that Hanno Vell/ }).click()
  await expect(app.getByText(/Hanno Vell was shown wheel and grinder by Tilda Quorn/)).toBeVisible()
  await app.getByLabel('Lesson').first().selectOption({ label: ink.title })
  await app.getByRole('button', { name: 'Set it for Hanno Vell' }).click()
  await expect(app.getByText(/set on .*, for any day/)).toBeVisible()
  await app.getByRole('link', { name: 'Lessons' }).click()
  await app.getByLabel('Who learns').selectOption({ label: 'Hanno Vell' })
  await expect(app.getByRole('listitem').filter({ hasText: ink.title })).toContainText('set for you')
  await openLesson(app, ink)
  await answerStep(app, ink, 0)
  await app.getByRole('button', { name: 'Next' }).click()
  await expect(app.getByRole('heading', { name: 'Put it right' })).toBeFocused()
  await app.reload()
  await expect(app.getByLabel('Who learns')).toHaveText(/Hanno Vell/)
  await expect(app.getByRole('listitem').filter({ hasText: ink.title })).toContainText('open at step 2 of 3')
  await openLesson(app, ink)
  await expect(app.getByRole('heading', { name: 'Put it right' })).toBeVisible()
  await app.getByRole('link', { name: 'Who has learnt what' }).click()
  await app.getByRole('radio', { name: /Hanno Vell/ }).check()
  await expect(app.getByRole('row', { name: ink.title })).toContainText('1 of 3')
  await expectGoodLooks(app, 'teach-people')
  await app.getByRole('button', { name: 'Forget all that Hanno Vell has learnt' }).click()
  await expect(app.getByText('Hanno Vell has not begun a lesson.')).toBeVisible()
})

test('lessons go on paper and out as a file; one that is wrong is refused with its lines, one of the workshop’s own is listed', async ({
  app,
}) => {
  await app.getByRole('link', { name: 'Teach', exact: true }).click()
  const choose = app.locator('input[type=file]')
  const file = (text: string) => ({ name: 'ours.json', mimeType: 'application/json', buffer: Buffer.from(text) })
  await choose.setInputFiles(file(inkText.replace('"minutes": 10', '"minutes": 1000')))
  await expect(app.getByRole('alert')).toContainText(/Line \d+: .*120/)
  await choose.setInputFiles(file(inkText.replace('"id": "ink"', '"id": "our-ink"').replace(ink.title, '‮<b>Ours</b>')))
  await expect(app.getByRole('button', { name: '‮<b>Ours</b>' })).toBeVisible()
  await expect(app.getByRole('alert')).toHaveCount(0)
  await app.getByRole('link', { name: 'Who has learnt what' }).click()
  await app.locator('section', { hasText: 'A lesson on paper' }).getByLabel('Lesson').selectOption({ label: ink.title })
  const made = async (name: string) => {
    const download = app.waitForEvent('download')
    await app.getByRole('button', { name }).click()
    return (await download).suggestedFilename()
  }
  expect(await made('Make the questions')).toBe('ink-questions-1.pdf')
  expect(await made('The lesson as a file')).toBe('ink.cwlesson')
  expect(await made('As a table')).toBe('who-has-learnt-what.csv')
  await app.getByLabel('Set', { exact: true }).fill('one')
  await expect(app.getByText('A whole number of up to six digits.')).toBeVisible()
})
