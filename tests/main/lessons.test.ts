import BetterSqlite from 'better-sqlite3'
import { expect, it } from 'vitest'
import { lessonFiles, lessonText } from '../lessons/support.ts'
import { benchForEach } from './benchForEach.ts'
import { codesOf } from './support.ts'

const bench = benchForEach()

const builtIn = lessonText(lessonFiles[8] as string)
/** A lesson of somebody's own, made from one of the program's. */
const own = (title = 'Our own', id = 'our-own') => JSON.stringify({ ...JSON.parse(builtIn), id, title })

const learning = () => bench().done('progress.list', {})
const person = async (name: string) => (await bench().done('person.add', { name, apprentice: 'yes' })).value

const kept = { lessonId: 'free-play', step: 2, answers: { 1: { right: true, tries: 2, off: -0.04 } }, done: false }

it('lists its own lessons in order, and the workshop’s after them', async () => {
  expect((await bench().done('lesson.list', {})).map(({ lesson }) => lesson.id).slice(0, 2)).toEqual([
    'wheel-and-hands',
    'why-a-curve',
  ])
  const { value: added, changeId } = await bench().done('lesson.add', { text: own() })
  expect(added).toMatchObject({ lessonId: 'our-own', title: 'Our own', version: 1 })
  const listed = await bench().done('lesson.list', {})
  expect(listed.at(-1)).toMatchObject({ lesson: { title: 'Our own' }, own: { id: added.id, version: 1 } })
  await bench().done('change.undo', { id: changeId })
  expect(await bench().done('lesson.list', {})).toHaveLength(lessonFiles.length)
})

it('takes a lesson out as a file and in again as the same, and no name twice', async () => {
  await bench().done('lesson.add', { text: own() })
  expect(codesOf(await bench().call('lesson.add', { text: own() }))).toEqual(['lessonNameTaken'])
  expect(codesOf(await bench().call('lesson.add', { text: builtIn }))).toEqual(['lessonNameTaken'])
  const { blobId, fileName } = await bench().done('lesson.file', { lessonId: 'our-own' })
  expect(fileName).toBe('our-own.cwlesson')
  const text = new TextDecoder().decode(bench().blobs.get(blobId)?.bytes)
  const { value } = await bench().done('lesson.add', { text: text.replace('"our-own"', '"our-second"') })
  const again = await bench().done('lesson.file', { lessonId: value.lessonId })
  const second = new TextDecoder().decode(bench().blobs.get(again.blobId)?.bytes)
  expect(second.replace('"our-second"', '"our-own"')).toBe(text)
})

it('says what is wrong with a lesson, and in which line', async () => {
  const check = async (text: string) =>
    (await bench().done('lesson.check', { text })).problems.map(({ code, params }) => [code, params.line])
  expect(await check(builtIn)).toEqual([])
  expect(await check('{\n  "version": 1,\n  oops\n}')).toEqual([['notJson', 3]])
  const lines = builtIn.split('\n')
  const at = lines.findIndex((line) => line.includes('"minutes"'))
  const spoilt = lines.with(at, '  "minutes": 9000,').join('\n')
  expect(await check(spoilt)).toEqual([['tooLarge', at + 1]])
  const set = lines.findIndex((line) => line.includes('"motion.stopTurnsLeft": 0.5'))
  expect(await check(lines.with(set, (lines[set] as string).replace('0.5', '99')).join('\n'))).toContainEqual([
    'tooLarge',
    set + 1,
  ])
  expect(codesOf(await bench().call('lesson.add', { text: spoilt }))).toEqual(['tooLarge'])
})

it('keeps how far somebody is, each lesson once, and what was done stays done', async () => {
  const { id: personId } = await person('Ilse Marrow')
  await bench().done('progress.keep', { ...kept, personId })
  await bench().done('progress.keep', { ...kept, personId: null, step: 0, answers: {} })
  await bench().done('progress.keep', { ...kept, personId, step: 4, done: true })
  await bench().done('progress.keep', { ...kept, personId, step: 1, done: false })
  const { progress } = await learning()
  expect(progress).toHaveLength(2)
  const hers = progress.find((line) => line.personId === personId)
  expect(hers).toMatchObject({ step: 1, answers: { 1: { right: true, tries: 2 } } })
  expect(hers?.doneAt).not.toBeNull()
  expect(hers?.startedAt.localeCompare(hers.at)).toBe(-1)
})

it('counts an apprentice’s first lesson once the wheel was shown, and anybody else’s at once', async () => {
  const { id: personId } = await person('Ilse Marrow')
  const { id: joinerId } = (await bench().done('person.add', { name: 'Gerd Loom', apprentice: 'no' })).value
  const first = { ...kept, lessonId: 'wheel-and-hands', done: true }
  const doneAt = async (id: string) =>
    (await learning()).progress.find((line) => line.personId === id && line.lessonId === first.lessonId)?.doneAt
  await bench().done('progress.keep', { ...first, personId })
  await bench().done('progress.keep', { ...first, personId: joinerId })
  expect([await doneAt(personId), typeof (await doneAt(joinerId))]).toEqual([null, 'string'])
  await bench().done('authorisation.give', { personId, who: 'Tilda Quorn' })
  await bench().done('progress.keep', { ...first, personId })
  expect(typeof (await doneAt(personId))).toBe('string')
})

it('knows who may work at the wheel and what is set, until it is taken back', async () => {
  const { id: personId } = await person('Ilse Marrow')
  await bench().done('authorisation.give', { personId, who: 'Tilda Quorn' })
  await bench().done('setWork.set', { personId, lessonId: 'ink', dueOn: '2026-02-01' })
  expect(await learning()).toMatchObject({
    authorisations: [{ personId, who: 'Tilda Quorn' }],
    setWork: [{ lessonId: 'ink', dueOn: '2026-02-01' }],
  })
  await bench().done('authorisation.take', { personId })
  await bench().done('setWork.remove', { personId, lessonId: 'ink' })
  expect(await learning()).toMatchObject({ authorisations: [], setWork: [] })
})

it('refuses a person who is not there, and forgets one who goes, whole', async () => {
  const nobody = 'bbbbbbbb-0000-4000-8000-000000000000'
  expect(codesOf(await bench().call('progress.keep', { ...kept, personId: nobody }))).toEqual(['learnerGone'])
  expect(codesOf(await bench().call('setWork.set', { personId: nobody, lessonId: 'ink', dueOn: null }))).toEqual([
    'learnerGone',
  ])
  const { id: personId, version } = await person('Ilse Marrow')
  const { id: teacherId } = await person('Gerd Loom')
  await bench().done('progress.keep', { ...kept, personId })
  await bench().done('authorisation.give', { personId: teacherId, who: 'Ilse Marrow' })
  await bench().done('setWork.set', { personId, lessonId: 'ink', dueOn: null })
  await bench().done('person.purge', { id: personId, version, inNotes: true, copies: 'keep' })
  const { progress, setWork, authorisations } = await learning()
  expect([progress, setWork]).toEqual([[], []])
  expect(authorisations.map(({ who }) => who)).toEqual(['N1'])
  const file = new BetterSqlite(bench().workshop.path(), { readonly: true })
  expect(file.serialize().includes('Ilse')).toBe(false)
  file.close()
})

it('forgets one lesson of somebody, or all', async () => {
  const { id: personId } = await person('Ilse Marrow')
  for (const lessonId of ['ink', 'fingers', 'honing'])
    await bench().done('progress.keep', { ...kept, personId, lessonId })
  await bench().done('progress.forget', { personId, lessonId: 'ink' })
  expect((await learning()).progress.map(({ lessonId }) => lessonId).sort()).toEqual(['fingers', 'honing'])
  await bench().done('progress.forget', { personId })
  expect((await learning()).progress).toEqual([])
})
