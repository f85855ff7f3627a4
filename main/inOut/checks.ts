import type { Kysely } from 'kysely'
import { type Problem, problem } from '../../geometry/result.ts'
import type { InOutNoun } from '../contract/inOut.ts'
import type { Database } from '../database/schema.ts'
import { parentsOf, placesTooDeep, tooDeep } from '../rack/placeDepth.ts'
import type { Known } from './known.ts'
import { type Alone, type Draft, referencesOf } from './nouns.ts'
import type { NounPlan, Planned } from './plan.ts'

/** What is wrong with a row in the company of the others; null: nothing. */
type Check = (planned: Planned) => Problem | null

/** A plan without the rows that a check refuses; nothing may speak of them any more. */
const refuse = (plan: NounPlan, known: Known, check: Check): NounPlan => {
  const judged = plan.planned.map((planned) => ({ planned, found: check(planned) }))
  if (judged.every(({ found }) => found === null)) return plan
  const refused = judged.flatMap(({ planned, found }) => {
    if (found === null) return []
    const stands = planned.place?.stands ?? false
    if (!stands) known.drop(plan.form.noun, planned.id)
    return [{ row: planned.row, id: planned.id, stands, problems: [found] }]
  })
  return {
    ...plan,
    planned: judged.filter(({ found }) => found === null).map(({ planned }) => planned),
    refused: [...plan.refused, ...refused],
  }
}

/** All that a record speaks of is in the rack or comes in with it. A record may speak of one of its own noun, so that one refused makes another refused. */
const checkReferences = (plan: NounPlan, known: Known): NounPlan => {
  const next = refuse(plan, known, ({ draft }) => {
    const lost = referencesOf(plan.form, draft).find(({ noun, id }) => !known.has(noun, id))
    return lost ? problem('notInRack', lost.key, { noun: lost.noun }) : null
  })
  return next === plan ? plan : checkReferences(next, known)
}

const sharedText = ({ keys, while: entry }: Alone, draft: Draft): string | null =>
  entry !== undefined && draft[entry] !== null ? null : keys.map((key) => String(draft[key])).join(' ')

const heldAlone = async (db: Database, noun: InOutNoun, alone: Alone): Promise<readonly (Draft & { id: string })[]> => {
  const tables = db as unknown as Kysely<Record<InOutNoun, Record<string, string | null>>>
  const columns = ['id', ...alone.keys, ...(alone.while === undefined ? [] : [alone.while])]
  const rows = await tables.selectFrom(noun).select(columns).where('deletedAt', 'is', null).execute()
  return rows as unknown as readonly (Draft & { id: string })[]
}

/** One job in hand a tool, one holder a tool, one entry a day and tool. */
const checkAlone = async (db: Database, plan: NounPlan, known: Known): Promise<NounPlan> => {
  const { form, planned } = plan
  const { alone } = form
  if (alone === null || planned.length === 0) return plan
  const renewed = new Set(planned.map(({ id }) => id))
  const standing = (await heldAlone(db, form.noun, alone)).filter(({ id }) => !renewed.has(id))
  const taken = new Set(standing.map((record) => sharedText(alone, record)))
  return refuse(plan, known, ({ draft }) => {
    const text = sharedText(alone, draft)
    if (text === null) return null
    if (taken.has(text)) return problem(alone.code, alone.keys[0] as string)
    taken.add(text)
    return null
  })
}

const checkPlaces = async (db: Database, plan: NounPlan, known: Known): Promise<NounPlan> => {
  const parents = await parentsOf(db)
  for (const { id, draft } of plan.planned) parents.set(id, draft.parentId as string | null)
  const deep = placesTooDeep(parents)
  return refuse(plan, known, ({ id }) => (deep.has(id) ? tooDeep() : null))
}

/** A picture comes with its bytes, or they are here already. @param bytes the hashes that came */
const checkPhotos = async (
  db: Database,
  plan: NounPlan,
  known: Known,
  bytes: { readonly has: (hash: string) => boolean },
): Promise<NounPlan> => {
  const rows = await db.selectFrom('photoBytes').select('hash').execute()
  const kept = new Set(rows.map(({ hash }) => hash))
  return refuse(plan, known, ({ draft }) => {
    const hash = String(draft.hash)
    return bytes.has(hash) || kept.has(hash) ? null : problem('photoMissing', 'hash')
  })
}

/** @returns the plans without rows that cannot stand beside the others; each noun comes after those it refers to */
export const checkTogether = async (
  db: Database,
  plans: readonly NounPlan[],
  known: Known,
  photos: ReadonlyMap<string, Uint8Array>,
): Promise<readonly NounPlan[]> => {
  const checked: NounPlan[] = []
  for (const plan of plans) {
    let next = plan
    if (plan.form.noun === 'place') next = await checkPlaces(db, next, known)
    if (plan.form.noun === 'photo') next = await checkPhotos(db, next, known, photos)
    next = await checkAlone(db, next, known)
    checked.push(checkReferences(next, known))
  }
  return checked
}
