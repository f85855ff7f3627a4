import { ok } from '../../geometry/result.ts'
import type { Desk } from '../database/desk.ts'
import { listRecords } from '../database/recordStore.ts'
import { personStore } from '../rack/stores.ts'
import type { Services } from '../services.ts'
import { readSettings } from '../settings/settings.ts'
import { createTexts } from '../texts.ts'
import type { Blobs } from '../workshop/blobs.ts'
import { type Draw, paperMaker } from '../workshop/paperMaker.ts'
import { learningOf } from './learnerServices.ts'
import { allLessons, needLesson } from './lessonServices.ts'
import type { makeWorksheet } from './makeWorksheet.ts'
import { progressTable } from './progressTable.ts'

/** The tasks that put lessons, and what was learnt, on paper or into a table. */
export const lessonPaperServices = (
  desk: Desk,
  blobs: Blobs,
  draw: Draw<Parameters<typeof makeWorksheet>>,
): Pick<Services, 'lesson.sheet' | 'progress.table'> => {
  const make = paperMaker(desk, blobs)
  return {
    'lesson.sheet': ({ lessonId, seed, with: which }, context) =>
      make(
        'application/pdf',
        context,
        () => desk.access.read((db) => needLesson(db, lessonId)),
        async (lesson) => {
          const { lengthUnit } = await desk.access.read(readSettings)
          return draw([{ lesson, seed, answers: which === 'answers', lengthUnit }, desk.now()], context.signal)
        },
      ),
    'progress.table': async (_, context) =>
      make(
        'text/csv',
        context,
        async () => {
          const [{ progress }, people, lessons] = await desk.access.read((db) =>
            Promise.all([learningOf(db), listRecords(db, personStore), allLessons(db)]),
          )
          return ok(progressTable(progress, people, lessons, createTexts().t))
        },
        async (table) => {
          const fileName = `${createTexts().t('worksheet:tableFile')}.csv`
          return ok({ bytes: new TextEncoder().encode(table), fileName })
        },
      ),
  }
}
