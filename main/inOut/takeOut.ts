import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { MadeFile } from '../cards/makeCard.ts'
import { fileKinds } from '../contract/fileKinds.ts'
import type { InOutNoun, TakeOut } from '../contract/inOut.ts'
import type { Database } from '../database/schema.ts'
import { photoPath } from '../photos/photoFiles.ts'
import { writeBundle } from './bundle.ts'
import { writeCell } from './cells.ts'
import { writeCsv } from './csv.ts'
import { type Gathered, writeDocument } from './document.ts'
import { CODE_COLUMN, ID_COLUMN } from './heads.ts'
import { type AnyRecord, allForms, formOf, type NounForm, referencesOf } from './nouns.ts'
import { type Along, placesOf, recordsOfIds, standingRecords, without } from './standing.ts'

/** What a tool takes along to a colleague: its log and pictures. Who had it and where it belongs stays here. */
const nounsOfTool: readonly InOutNoun[] = ['tool', 'benchLog', 'happening', 'photo']
/** What these speak of that means the same in any workshop. */
const nounsWithTool: readonly InOutNoun[] = ['purpose', 'ownField']

/** Ids of standing records, of every noun that is spoken of. */
const standingIds = async (db: Database, forms: readonly NounForm[]): Promise<Map<InOutNoun, ReadonlySet<string>>> => {
  const nouns = new Set(
    forms.flatMap(({ columns, noun }) => [
      noun,
      ...columns.flatMap(({ holds }) => (holds.kind === 'record' ? [holds.noun] : [])),
      ...(noun === 'tool' ? (['purpose', 'ownField'] as const) : []),
    ]),
  )
  const along = new Map<InOutNoun, ReadonlySet<string>>()
  for (const { noun } of allForms) {
    if (!nouns.has(noun)) continue
    const places = await placesOf(db, noun)
    along.set(noun, new Set(places.filter(({ stands }) => stands).map(({ id }) => id)))
  }
  return along
}

/** Records as they are without those that stay behind; noun after noun, so that what speaks of one left behind is left too. */
const gather = async (
  db: Database,
  forms: readonly NounForm[],
  along: Map<InOutNoun, ReadonlySet<string>>,
  toolId: string | null = null,
): Promise<Gathered> => {
  const gathered: { form: NounForm; records: readonly AnyRecord[] }[] = []
  for (const form of forms) {
    const all = await standingRecords(db, form, toolId)
    const records = all.flatMap((record) => without(form, record, along, toolId === null ? null : undefined) ?? [])
    along.set(form.noun, new Set(records.map(({ id }) => id)))
    gathered.push({ form, records })
  }
  return gathered
}

const gatherTool = async (db: Database, toolId: string): Promise<Gathered> => {
  const tools = await recordsOfIds(db, formOf('tool'), [toolId])
  const spoken = [...tools.values()].flatMap((tool) => referencesOf(formOf('tool'), tool))
  const along = new Map<InOutNoun, ReadonlySet<string>>()
  const shared: { form: NounForm; records: readonly AnyRecord[] }[] = []
  for (const form of nounsWithTool.map(formOf)) {
    const ids = spoken.filter(({ noun }) => noun === form.noun).map(({ id }) => id)
    const records = [...(await recordsOfIds(db, form, ids)).values()]
    along.set(form.noun, new Set(records.map(({ id }) => id)))
    shared.push({ form, records })
  }
  return [...shared, ...(await gather(db, nounsOfTool.map(formOf), along, toolId))]
}

const codesOf = async (db: Database, along: Along): Promise<ReadonlyMap<string, string>> => {
  const codes = new Map<string, string>()
  for (const noun of along.keys()) for (const { id, code } of await placesOf(db, noun)) codes.set(id, code)
  return codes
}

/** Parts of a row that our own table has before and after the entries. */
const tableOf = (form: NounForm, records: readonly AnyRecord[], codes: ReadonlyMap<string, string>): string => {
  const { columns } = form
  const cells = (record: AnyRecord): readonly string[] => [
    record.code,
    ...columns.map((column) => writeCell(column, record[column.key], (id) => codes.get(id) ?? '')),
    record.id,
  ]
  return writeCsv([CODE_COLUMN, ...columns.map(({ head }) => head), ID_COLUMN], records.map(cells))
}

const photosOf = async (db: Database, gathered: Gathered): Promise<ReadonlyMap<string, Uint8Array>> => {
  const photos = gathered.find(({ form }) => form.noun === 'photo')?.records ?? []
  const files = new Map<string, Uint8Array>()
  for (const { hash, mediaType } of photos) {
    const { bytes } = await db
      .selectFrom('photoBytes')
      .select('bytes')
      .where('hash', '=', String(hash))
      .executeTakeFirstOrThrow()
    files.set(photoPath(String(hash), String(mediaType)), bytes)
  }
  return files
}

const allOf = async (db: Database, { what, toolId }: TakeOut): Promise<Result<Gathered>> => {
  if (what !== 'tool' || toolId === undefined) {
    const forms = what === 'rack' ? allForms : [formOf(what)]
    return ok(await gather(db, forms, await standingIds(db, forms)))
  }
  const gathered = await gatherTool(db, toolId)
  const isThere = gathered.some(({ form, records }) => form.noun === 'tool' && records.length > 0)
  return isThere ? ok(gathered) : failed(problem('noLongerThere', 'toolId'))
}

const endings = { csv: 'csv', json: 'json', bundle: fileKinds.rack.ending } as const
const encoded = (text: string): Uint8Array => new TextEncoder().encode(text)

/** @returns a file with what was asked for, as it stands now */
export const takeOut = async (db: Database, asked: TakeOut): Promise<Result<MadeFile>> => {
  const gathered = await allOf(db, asked)
  if (!gathered.ok) return gathered
  const [first] = gathered.value
  const tool = gathered.value.find(({ form }) => form.noun === 'tool')?.records[0]
  const name = asked.what === 'tool' && asked.toolId !== undefined && tool ? `tool-${tool.code}` : asked.what
  const fileName = `${name}.${endings[asked.form]}`
  if (asked.form === 'bundle')
    return ok({ bytes: writeBundle(writeDocument(gathered.value), await photosOf(db, gathered.value)), fileName })
  if (asked.form === 'json') {
    const plain = gathered.value.filter(({ form }) => form.noun !== 'photo')
    return ok({ bytes: encoded(writeDocument(plain)), fileName })
  }
  if (!first || gathered.value.length > 1 || first.form.noun === 'photo') return failed(problem('tableOneNoun', 'what'))
  const codes = await codesOf(db, await standingIds(db, [first.form]))
  return ok({ bytes: encoded(tableOf(first.form, first.records, codes)), fileName })
}
