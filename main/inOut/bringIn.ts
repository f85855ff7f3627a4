import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { Counts, Fault, InOutNoun, Look } from '../contract/inOut.ts'
import type { Desk } from '../database/desk.ts'
import type { Database } from '../database/schema.ts'
import { counting, unlessStopped, type Watch } from '../watch.ts'
import { checkTogether } from './checks.ts'
import { type Known, knownRecords } from './known.ts'
import { formOf } from './nouns.ts'
import type { Offer } from './offered.ts'
import { type NounPlan, planNoun, type Refused } from './plan.ts'
import { rowsToWrite, writePlan } from './write.ts'

/** Faults told one by one; a table read the wrong way has one in every row. */
const FAULTS_TOLD = 200

const sum = (numbers: readonly number[]): number => numbers.reduce((all, each) => all + each, 0)

const spokenOf = ({ nouns }: Offer): ReadonlySet<InOutNoun> =>
  new Set(
    nouns.flatMap(({ noun }) => [
      ...formOf(noun).columns.flatMap(({ holds }) => (holds.kind === 'record' ? [holds.noun] : [])),
      ...(noun === 'tool' ? (['purpose', 'ownField'] as const) : []),
    ]),
  )

const planAll = async (
  db: Database,
  desk: Desk,
  { nouns, photos }: Offer,
  known: Known,
  went: (rows: number) => void,
): Promise<readonly NounPlan[]> => {
  const plans: NounPlan[] = []
  for (const offered of nouns)
    plans.push(await planNoun(db, formOf(offered.noun), offered, { known, newId: desk.newId, went }))
  return checkTogether(db, plans, known, photos)
}

const countsOf = ({ form, planned, refused }: NounPlan): Counts => {
  const of = (fate: string) => planned.filter((each) => each.fate === fate).length
  return {
    noun: form.noun,
    added: of('added'),
    changed: of('changed'),
    back: of('back'),
    same: of('same'),
    faulty: refused.length,
  }
}

const faultsOf = ({ form, offered }: NounPlan, { row, problems }: Refused): readonly Fault[] =>
  problems.map(({ code, path, params }) => {
    const [key = ''] = path.split('.')
    const column = offered.heads.get(key) ?? form.columns.find((each) => each.key === key)?.head ?? key
    return { noun: form.noun, row, column, code, params: { ...params } }
  })

/** What a plan would do, in figures and words. */
export type Outlook = Pick<Look, 'counts' | 'faults' | 'faultCount'>

const outlookOf = (plans: readonly NounPlan[]): Outlook => {
  const faults = plans.flatMap((plan) =>
    [...plan.refused].sort((a, b) => a.row - b.row).flatMap((refused) => faultsOf(plan, refused)),
  )
  return { counts: plans.map(countsOf), faults: faults.slice(0, FAULTS_TOLD), faultCount: faults.length }
}

const rowsOf = ({ nouns }: Offer): number => sum(nouns.map(({ rows }) => rows.length))

/** @returns what bringing in would do; nothing is written */
export const lookAt = (db: Database, desk: Desk, offer: Offer, watch: Watch): Promise<Result<Outlook>> =>
  unlessStopped(async () => {
    const went = counting(watch, rowsOf(offer))
    return ok(outlookOf(await planAll(db, desk, offer, await knownRecords(db, spokenOf(offer)), went)))
  })

const writePhotos = async (db: Database, offer: Offer, plans: readonly NounPlan[]): Promise<void> => {
  const wanted = plans.filter(({ form }) => form.noun === 'photo').flatMap(({ planned }) => planned)
  for (const hash of new Set(wanted.map(({ draft }) => String(draft.hash)))) {
    const bytes = offer.photos.get(hash)
    if (!bytes) continue
    await db
      .insertInto('photoBytes')
      .values({ hash, bytes })
      .onConflict((there) => there.column('hash').doNothing())
      .execute()
  }
}

/** Share of the work that judging takes. */
const JUDGED = 0.3

/**
 * Judges every row once more, on what stands now, and writes what is good of it: all of it or nothing.
 *
 * @param leaveOut whether faulty rows are left out; otherwise one is enough and the answer is `fileFaulty`
 */
export const bringIn = (
  db: Database,
  desk: Desk,
  offer: Offer,
  leaveOut: boolean,
  watch: Watch,
): Promise<Result<readonly Counts[]>> =>
  unlessStopped(async () => {
    const judged = counting(watch, rowsOf(offer), 0, JUDGED)
    const plans = await planAll(db, desk, offer, await knownRecords(db, spokenOf(offer)), judged)
    const { counts, faultCount } = outlookOf(plans)
    if (faultCount > 0 && !leaveOut) return failed(problem('fileFaulty', '', { count: faultCount }))
    const written = counting(watch, sum(plans.map(rowsToWrite)), JUDGED, 1)
    await writePhotos(db, offer, plans)
    for (const plan of plans) {
      const made = await writePlan(db, desk, plan, written)
      if (!made.ok) return made
    }
    return ok(counts)
  })
