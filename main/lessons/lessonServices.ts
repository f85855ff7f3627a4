import type { Lesson } from '../../geometry/lesson/lesson.ts'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { fileKinds } from '../contract/fileKinds.ts'
import type { LessonLine, OwnLesson } from '../contract/teaching.ts'
import type { Desk } from '../database/desk.ts'
import { listRecords } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import { recordServices } from '../rack/recordServices.ts'
import type { Services } from '../services.ts'
import type { Blobs } from '../workshop/blobs.ts'
import { builtInLessons } from './builtIn.ts'
import { checkLessonText } from './checkLesson.ts'
import { ownLessonStore } from './lessonStore.ts'

/** An own lesson as it stands; null where an older program's lesson is no longer one. */
const lineOf = ({ id, code, version, document }: OwnLesson): LessonLine | null => {
  const checked = checkLessonText(document)
  return checked.ok ? { lesson: checked.value, own: { id, code, version } } : null
}

/** @returns the program's lessons, then the workshop's own */
export const allLessons = async (db: Database): Promise<LessonLine[]> => [
  ...builtInLessons().map((lesson) => ({ lesson, own: null })),
  ...(await listRecords(db, ownLessonStore)).map(lineOf).filter((line) => line !== null),
]

/** @returns the lesson of a name, or the problem that there is none any more */
export const needLesson = async (db: Database, lessonId: string): Promise<Result<Lesson>> => {
  const line = (await allLessons(db)).find(({ lesson }) => lesson.id === lessonId)
  return line ? ok(line.lesson) : failed(problem('lessonGone', 'lessonId', { lessonId }))
}

/** Laid out as every lesson file is, whoever typed it how. */
const documentOf = (lesson: Lesson): string => `${JSON.stringify(lesson, null, 2)}\n`

/** What a record is made of; a name that another lesson has is refused. */
const draftOf = (text: string): Result<Omit<OwnLesson, 'id' | 'code' | 'version'>> => {
  const checked = checkLessonText(text)
  if (!checked.ok) return checked
  const { id, title } = checked.value
  return ok({ lessonId: id, title, document: documentOf(checked.value) })
}

const nameIsFree = async (db: Database, { id, lessonId }: OwnLesson): Promise<Result<null>> => {
  const taken =
    builtInLessons().some((lesson) => lesson.id === lessonId) ||
    (await listRecords(db, ownLessonStore)).some((other) => other.lessonId === lessonId && other.id !== id)
  return taken ? failed(problem('lessonNameTaken', 'id', { lessonId })) : ok(null)
}

/** The calls about lessons themselves. */
export const lessonServices = (
  desk: Desk,
  blobs: Blobs,
): Pick<Services, `lesson.${'list' | 'check' | 'add' | 'edit' | 'remove' | 'file'}`> => {
  const { add, edit, remove } = recordServices(desk, ownLessonStore, { mayStand: nameIsFree })
  return {
    'lesson.list': async () => ok(await desk.access.read(allLessons)),
    'lesson.check': async ({ text }) => {
      const checked = checkLessonText(text)
      return ok({ problems: checked.ok ? [] : [...checked.problems], lesson: checked.ok ? checked.value : null })
    },
    'lesson.add': async ({ text }, context) => {
      const draft = draftOf(text)
      return draft.ok ? add(draft.value, context) : draft
    },
    'lesson.edit': async ({ text, ...seen }, context) => {
      const draft = draftOf(text)
      return draft.ok ? edit({ ...seen, draft: draft.value }, context) : draft
    },
    'lesson.remove': remove,
    'lesson.file': async ({ lessonId }) => {
      const lesson = await desk.access.read((db) => needLesson(db, lessonId))
      if (!lesson.ok) return lesson
      const blobId = desk.newId()
      const fileName = `${lessonId}.${fileKinds.lesson.ending}`
      blobs.put(blobId, { bytes: new TextEncoder().encode(documentOf(lesson.value)), fileName }, 'application/json')
      return ok({ blobId, fileName })
    },
  }
}
