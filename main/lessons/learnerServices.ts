import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { CallInput } from '../contract/calls.ts'
import type { Learning, Progress } from '../contract/teaching.ts'
import type { Desk } from '../database/desk.ts'
import { findRecord } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import { personStore } from '../rack/stores.ts'
import type { CallContext, Services } from '../services.ts'
import { builtInLessons } from './builtIn.ts'

/** In the file nobody is an empty id, so that there is one line a lesson for nobody too. */
const NOBODY = ''

/** @returns all that is known of those who learn, newest first */
export const learningOf = async (db: Database): Promise<Learning> => {
  const progress = await db.selectFrom('progress').selectAll().orderBy('at', 'desc').execute()
  const authorisations = await db.selectFrom('authorisation').selectAll().orderBy('at', 'desc').execute()
  const setWork = await db.selectFrom('setWork').selectAll().orderBy('setAt', 'desc').execute()
  return {
    progress: progress.map(({ personId, answers, ...rest }) => ({
      ...rest,
      personId: personId === NOBODY ? null : personId,
      answers: JSON.parse(answers) as Progress['answers'],
    })),
    authorisations,
    setWork,
  }
}

const mustStand = async (db: Database, personId: string | null): Promise<Result<null>> =>
  personId === null || (await findRecord(db, personStore, personId))
    ? ok(null)
    : failed(problem('learnerGone', 'personId'))

/** An apprentice's first lesson counts once the teacher has noted that wheel and grinder were shown. */
const mayCount = async (db: Database, { personId, lessonId }: CallInput<'progress.keep'>): Promise<boolean> => {
  if (personId === null || lessonId !== builtInLessons()[0]?.id) return true
  const person = await findRecord(db, personStore, personId)
  if (person?.apprentice !== 'yes') return true
  const shown = await db.selectFrom('authorisation').select('at').where('personId', '=', personId).executeTakeFirst()
  return shown !== undefined
}

const keep = async (db: Database, at: string, kept: CallInput<'progress.keep'>): Promise<Result<null>> => {
  const stands = await mustStand(db, kept.personId)
  if (!stands.ok) return stands
  const { lessonId, step } = kept
  const counts = kept.done && (await mayCount(db, kept))
  const columns = { step, answers: JSON.stringify(kept.answers), at }
  // Done once is done: looking at a lesson again does not take that away.
  const doneAt = counts ? at : null
  await db
    .insertInto('progress')
    .values({ personId: kept.personId ?? NOBODY, lessonId, ...columns, startedAt: at, doneAt })
    .onConflict((conflict) =>
      conflict.columns(['personId', 'lessonId']).doUpdateSet({
        ...columns,
        doneAt: (row) => row.fn.coalesce('progress.doneAt', row.val(doneAt)),
      }),
    )
    .execute()
  return ok(null)
}

const forget = async (
  db: Database,
  { personId, lessonId = null }: CallInput<'progress.forget'>,
): Promise<Result<null>> => {
  let lines = db.deleteFrom('progress').where('personId', '=', personId ?? NOBODY)
  if (lessonId !== null) lines = lines.where('lessonId', '=', lessonId)
  await lines.execute()
  return ok(null)
}

/** The calls about those who learn: outside the change log, see migration7.ts. */
export const learnerServices = (
  desk: Desk,
): Pick<
  Services,
  `progress.${'list' | 'keep' | 'forget'}` | `authorisation.${'give' | 'take'}` | `setWork.${'set' | 'remove'}`
> => {
  const now = () => desk.now().toISOString()
  const write = async (context: CallContext, work: (db: Database) => Promise<Result<null>>) => {
    const done = await desk.access.write(work)
    if (done.ok) context.changed('progress', [])
    return done
  }
  const about = (context: CallContext, personId: string, work: (db: Database) => Promise<unknown>) =>
    write(context, async (db) => {
      const stands = await mustStand(db, personId)
      if (!stands.ok) return stands
      await work(db)
      return ok(null)
    })
  return {
    'progress.list': async () => ok(await desk.access.read(learningOf)),
    'progress.keep': (kept, context) => write(context, (db) => keep(db, now(), kept)),
    'progress.forget': (which, context) => write(context, (db) => forget(db, which)),
    'authorisation.give': ({ personId, who }, context) =>
      about(context, personId, (db) =>
        db
          .insertInto('authorisation')
          .values({ personId, who, at: now() })
          .onConflict((conflict) => conflict.column('personId').doUpdateSet({ who, at: now() }))
          .execute(),
      ),
    'authorisation.take': ({ personId }, context) =>
      about(context, personId, (db) => db.deleteFrom('authorisation').where('personId', '=', personId).execute()),
    'setWork.set': ({ personId, lessonId, dueOn }, context) =>
      about(context, personId, (db) =>
        db
          .insertInto('setWork')
          .values({ personId, lessonId, dueOn, setAt: now() })
          .onConflict((conflict) => conflict.columns(['personId', 'lessonId']).doUpdateSet({ dueOn, setAt: now() }))
          .execute(),
      ),
    'setWork.remove': ({ personId, lessonId }, context) =>
      about(context, personId, (db) =>
        db.deleteFrom('setWork').where('personId', '=', personId).where('lessonId', '=', lessonId).execute(),
      ),
  }
}
