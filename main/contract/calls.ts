import { z } from 'zod'
import { lessonSchema } from '../../geometry/lesson/lesson.ts'
import { copyContentsSchema, copyNameSchema, copySchema } from './copies.ts'
import { dayQueueSchema, enqueueSchema } from './day.ts'
import {
  benchLogDraftSchema,
  benchLogSchema,
  changeSchema,
  fixtureDraftSchema,
  fixtureSchema,
  jobRecordSchema,
  settingsSchema,
  stationDraftSchema,
  stationSchema,
  toolDraftSchema,
  toolLineSchema,
  toolSchema,
} from './entities.ts'
import { errandInputSchema, namedLoanSchema } from './errand.ts'
import {
  keptFilterDraftSchema,
  keptFilterSchema,
  newPhotoSchema,
  ownFieldDraftSchema,
  ownFieldSchema,
  photoSchema,
  purposeDraftSchema,
  purposeSchema,
  toolTemplateDraftSchema,
  toolTemplateSchema,
} from './extras.ts'
import { askedSchema, foundSchema, standingSchema } from './finding.ts'
import { bringInSchema, broughtSchema, lookSchema, offerSchema, takeOutSchema } from './inOut.ts'
import { foundByCodeSchema, labelOrderSchema } from './labels.ts'
import { learntSchema, stationRemovalSchema } from './learnt.ts'
import { lifeSchema } from './life.ts'
import { outlookSchema, setSchema, whichSchema } from './many.ts'
import {
  lendSchema,
  loanSchema,
  personDraftSchema,
  personSchema,
  placeDraftSchema,
  placeSchema,
  purgeSchema,
  tracesSchema,
} from './people.ts'
import { faultReportSchema, pageFaultSchema, reportNameSchema } from './reports.ts'
import { beginStocktakeSchema, seeSchema, stocktakeStandingSchema } from './stocktake.ts'
import {
  authorisationSchema,
  forgetSchema,
  keepProgressSchema,
  learningSchema,
  lessonLineSchema,
  lessonTextSchema,
  ownLessonSchema,
  setWorkSchema,
  worksheetSchema,
} from './teaching.ts'
import {
  dressingDraftSchema,
  dressingSchema,
  happeningDraftSchema,
  happeningSchema,
  queueEntrySchema,
  sightingSchema,
  stocktakeSchema,
} from './work.ts'

/**
 * Every call a client can make, on any host. A query changes nothing; a command changes data, is one transaction and one
 * entry of the change log; a task takes time, reports progress and can be cancelled, and one that changes data is a command in all else. The router refuses any other name,
 * and validates input and output by these schemas.
 */
type Kind = 'query' | 'command' | 'task'

const entry = <K extends Kind, I extends z.ZodType, O extends z.ZodType>(kind: K, input: I, output: O) => ({
  kind,
  input,
  output,
})

type Entry<K extends Kind, I extends z.ZodType, O extends z.ZodType> = ReturnType<typeof entry<K, I, O>>

const noticeSchema = z.strictObject({
  code: z.string(),
  path: z.string(),
  params: z.record(z.string(), z.union([z.string(), z.number()])),
})

const nothing = z.strictObject({})
const byId = z.strictObject({ id: z.uuid() })
/** Compare and set: a command names the version it saw, and a newer one in the meantime is a conflict, never lost. */
const seen = { id: z.uuid(), version: z.int().min(1) }

const onDay = enqueueSchema.pick({ onDay: true })

/** A file that was made: its bytes are fetched by blob id. */
const madeFile = z.strictObject({ blobId: z.uuid(), fileName: z.string() })

/** A change that was made: the record now, and the change's id for the undo in the message. */
const changed = <T extends z.ZodType>(value: T) => z.strictObject({ value, changeId: z.int() })
type Changed<T extends z.ZodType> = ReturnType<typeof changed<T>>
type EditInput<D extends z.ZodType> = z.ZodObject<typeof seen & { draft: D }, z.core.$strict>

/** List, add, edit and remove for a noun whose records are what the user says of them. @param asked what the list is asked by */
const recordCalls = <
  const N extends string,
  D extends z.ZodType,
  R extends z.ZodType,
  A extends z.ZodType = typeof nothing,
>(
  noun: N,
  draft: D,
  full: R,
  asked?: A,
) =>
  ({
    [`${noun}.list`]: entry('query', (asked ?? nothing) as A, z.array(full)),
    [`${noun}.add`]: entry('command', draft, changed(full)),
    [`${noun}.edit`]: entry('command', z.strictObject({ ...seen, draft }), changed(full)),
    [`${noun}.remove`]: entry('command', z.strictObject(seen), changed(z.null())),
  }) as {
    readonly [K in `${N}.list`]: Entry<'query', A, z.ZodArray<R>>
  } & {
    readonly [K in `${N}.add`]: Entry<'command', D, Changed<R>>
  } & {
    readonly [K in `${N}.edit`]: Entry<'command', EditInput<D>, Changed<R>>
  } & {
    readonly [K in `${N}.remove`]: Entry<'command', z.ZodObject<typeof seen, z.core.$strict>, Changed<z.ZodNull>>
  }

/** A file that was handed in, by its blob, with the name it had. */
const offeredFileSchema = z.strictObject({ blobId: z.uuid(), fileName: z.string().min(1).max(255) })

/** A person goes for good, by a call of its own. */
const { 'person.remove': _, ...personCalls } = recordCalls('person', personDraftSchema, personSchema)

export const calls = {
  'tool.find': entry('query', askedSchema, foundSchema),
  /** One tool by its id or its code; null where there is none. */
  'tool.one': entry('query', z.union([byId, z.strictObject({ code: z.string().max(12) })]), toolLineSchema.nullable()),
  /** How many grinds a tool has left; null where its length was not measured or no grind says what it took. */
  'tool.life': entry('query', byId, lifeSchema.nullable()),
  'tool.standing': entry('query', nothing, standingSchema),
  'tool.add': entry('command', toolDraftSchema, changed(toolSchema)),
  'tool.edit': entry('command', z.strictObject({ ...seen, draft: toolDraftSchema }), changed(toolSchema)),
  'tool.remove': entry('command', z.strictObject(seen), changed(z.null())),
  /** Does one thing to tools as they are scanned: a happening, a place, a loan, a day's queue. */
  'tool.errand': entry('command', errandInputSchema, changed(z.null())),

  /** Many tools at once: what a change would do, and the change or removal itself, with how many it touched. */
  'tools.look': entry('query', z.strictObject({ which: whichSchema, set: setSchema }), outlookSchema),
  'tools.edit': entry('task', z.strictObject({ which: whichSchema, set: setSchema }), changed(z.int())),
  'tools.remove': entry('task', z.strictObject({ which: whichSchema }), changed(z.int())),

  ...recordCalls('station', stationDraftSchema, stationSchema),
  ...recordCalls('fixture', fixtureDraftSchema, fixtureSchema),
  ...recordCalls('place', placeDraftSchema, placeSchema),
  ...personCalls,
  /** Where a person's name stands: lines of logs, loans, the codes of notes, and copies of the data. */
  'person.traces': entry('query', byId, tracesSchema),
  /** Takes somebody and the name out of everything; this is never taken back. @returns copies that still hold the name */
  'person.purge': entry(
    'command',
    z.strictObject({ ...seen, ...purgeSchema.shape }),
    z.strictObject({ copies: z.array(copySchema) }),
  ),
  ...recordCalls('purpose', purposeDraftSchema, purposeSchema),
  ...recordCalls('ownField', ownFieldDraftSchema, ownFieldSchema),
  ...recordCalls('keptFilter', keptFilterDraftSchema, keptFilterSchema),
  ...recordCalls('toolTemplate', toolTemplateDraftSchema, toolTemplateSchema),
  /** Lends tools to somebody by name, and takes them back; several are one change. */
  /** Who has had a tool, newest first. */
  'loan.list': entry('query', z.strictObject({ toolId: z.uuid() }), z.array(namedLoanSchema)),
  'loan.lend': entry('command', lendSchema, changed(z.array(loanSchema))),
  'loan.return': entry('command', lendSchema.pick({ toolIds: true }), changed(z.array(loanSchema))),
  /** What happened to a tool, and to a station's wheel, newest first. */
  ...recordCalls('happening', happeningDraftSchema, happeningSchema, z.strictObject({ toolId: z.uuid() })),
  /** Pictures of a tool, newest first; each is fetched as a blob by its own id. */
  'photo.list': entry('query', z.strictObject({ toolId: z.uuid() }), z.array(photoSchema)),
  'photo.add': entry('command', newPhotoSchema, changed(photoSchema)),
  'photo.edit': entry('command', z.strictObject({ ...seen, caption: photoSchema.shape.caption }), changed(photoSchema)),
  'photo.remove': entry('command', z.strictObject(seen), changed(z.null())),
  ...recordCalls('dressing', dressingDraftSchema, dressingSchema, z.strictObject({ stationId: z.uuid() })),

  /** A day's irons in the order to grind them. */
  'queueEntry.list': entry('query', onDay, dayQueueSchema),
  /** Puts tools on a day's queue, each once. @returns the entries that were not there */
  'queueEntry.add': entry('command', enqueueSchema, changed(z.array(queueEntrySchema))),
  /** Brings over what was not done on the days before. */
  'queueEntry.carry': entry('command', onDay, changed(z.array(queueEntrySchema))),
  'queueEntry.tick': entry(
    'command',
    z.strictObject({ ...seen, done: z.enum(['yes', 'no']) }),
    changed(queueEntrySchema),
  ),
  'queueEntry.remove': entry('command', z.strictObject(seen), changed(z.null())),
  /** A day on paper: its order on one sheet, and a job card each, with the codes of those that can have none. */
  'queueEntry.sheet': entry('task', onDay, madeFile),
  'queueEntry.cards': entry('task', onDay, madeFile.extend({ without: z.array(z.string()) })),

  /** Going round to see what is there: the one begun last, still going on or ended. */
  'stocktake.last': entry('query', nothing, stocktakeStandingSchema.nullable()),
  'stocktake.begin': entry('command', beginStocktakeSchema, changed(stocktakeSchema)),
  /** A tool is there; seen twice it is one sighting. */
  'stocktake.see': entry('command', seeSchema, changed(sightingSchema)),
  'stocktake.end': entry('command', z.strictObject(seen), changed(stocktakeSchema)),

  /** The program's lessons and the workshop's own, in the order to learn them. */
  'lesson.list': entry('query', nothing, z.array(lessonLineSchema)),
  /** What is wrong with a lesson file, each problem with its line; no problem: the lesson. */
  'lesson.check': entry(
    'query',
    lessonTextSchema,
    z.strictObject({ problems: z.array(noticeSchema), lesson: lessonSchema.nullable() }),
  ),
  'lesson.add': entry('command', lessonTextSchema, changed(ownLessonSchema)),
  'lesson.edit': entry('command', z.strictObject({ ...seen, ...lessonTextSchema.shape }), changed(ownLessonSchema)),
  'lesson.remove': entry('command', z.strictObject(seen), changed(z.null())),
  /** A lesson as a file for a colleague. */
  'lesson.file': entry('task', worksheetSchema.pick({ lessonId: true }), madeFile),

  /** A lesson's questions on paper, or their answers. */
  'lesson.sheet': entry('task', worksheetSchema, madeFile),

  /** How far everybody is, who may work at the wheel, and what is set for whom. */
  'progress.list': entry('query', nothing, learningSchema),
  /** The same as a table. */
  'progress.table': entry('task', nothing, madeFile),
  'progress.keep': entry('command', keepProgressSchema, z.null()),
  /** Takes what somebody learnt out for good; there is no undo. */
  'progress.forget': entry('command', forgetSchema, z.null()),
  'authorisation.give': entry('command', authorisationSchema.omit({ at: true }), z.null()),
  'authorisation.take': entry('command', authorisationSchema.pick({ personId: true }), z.null()),
  'setWork.set': entry('command', setWorkSchema.omit({ setAt: true }), z.null()),
  'setWork.remove': entry('command', setWorkSchema.pick({ personId: true, lessonId: true }), z.null()),

  /** What the measured grinds say of a fixture, and of a station's wheel. */
  'fixture.learnt': entry('query', byId, learntSchema),
  'station.removal': entry('query', byId, stationRemovalSchema),

  /** The tool's job in hand, made from tool, station and fixture the first time. */
  'job.open': entry('command', z.strictObject({ toolId: z.uuid() }), jobRecordSchema),
  'job.edit': entry(
    'command',
    z.strictObject({
      ...seen,
      document: jobRecordSchema.shape.document,
      stationId: z.uuid().optional(),
      fixtureId: z.uuid().optional(),
    }),
    changed(jobRecordSchema),
  ),

  'benchLog.list': entry('query', z.strictObject({ toolId: z.uuid() }), z.array(benchLogSchema)),
  'benchLog.add': entry('command', benchLogDraftSchema, changed(benchLogSchema)),
  /** Lets a fixture learn from a line, or not. */
  'benchLog.edit': entry(
    'command',
    z.strictObject({ ...seen, counts: benchLogSchema.shape.counts }),
    changed(benchLogSchema),
  ),
  'benchLog.remove': entry('command', z.strictObject(seen), changed(z.null())),

  /** The newest changes: of everything, of one record, or those that took something away and still stand. */
  'change.list': entry(
    'query',
    z.strictObject({
      most: z.int().min(1).max(200).default(20),
      entityId: z.string().max(100).optional(),
      only: z.enum(['all', 'removed']).default('all'),
    }),
    z.array(changeSchema),
  ),
  /** Takes back the change of this id, or without one the newest that still stands. */
  'change.undo': entry('command', z.strictObject({ id: z.int().optional() }), changeSchema),

  'settings.get': entry('query', nothing, settingsSchema),
  'settings.edit': entry('command', settingsSchema, changed(settingsSchema)),

  /** Which data file is open. */
  'workshop.get': entry(
    'query',
    nothing,
    z.strictObject({
      rack: z.enum(['demo', 'own']),
      tools: z.int(),
      /** Whether the walk round the screens was taken or declined on this data folder. */
      tourSeen: z.boolean(),
      /** What the user should hear of the open rack; words under `problems`. */
      notices: z.array(noticeSchema).optional(),
    }),
  ),
  /** Opens the user's own rack, made empty the first time, or the demo again. */
  'workshop.open': entry(
    'command',
    z.strictObject({ rack: z.enum(['demo', 'own']) }),
    z.strictObject({ rack: z.enum(['demo', 'own']) }),
  ),
  /** The program itself, and where it keeps the open rack and its copies. */
  'workshop.about': entry(
    'query',
    nothing,
    z.strictObject({ version: z.string(), engine: z.string(), file: z.string(), copies: z.string() }),
  ),
  /** Notes that the walk round the screens need not be offered again; it stands beside the racks, not in their history. */
  'workshop.toured': entry('command', nothing, z.null()),

  /** Copies of the open data file, newest first, and where they are kept. */
  'copy.list': entry('query', nothing, z.strictObject({ copies: z.array(copySchema), folder: z.string() })),
  'copy.look': entry('query', copyNameSchema, copyContentsSchema),
  'copy.make': entry('command', nothing, z.null()),
  /** Puts a copy in the data file's place; the file as it was becomes a copy, so that there is a way back. */
  'copy.restore': entry('command', copyNameSchema, z.strictObject({ at: z.iso.datetime() })),

  /** The page for the wheel: PDF to be kept, SVG for the page to print. */
  'card.make': entry('task', byId.extend({ form: z.enum(['pdf', 'svg']).default('pdf') }), madeFile),
  /** The wanted edge 1 : 1 to lay an iron on, with the predicted one where that is asked for. */
  'template.make': entry(
    'task',
    z.strictObject({ id: z.uuid(), form: z.enum(['svg', 'dxf', 'pdf']), predicted: z.boolean() }),
    madeFile,
  ),

  /** A file that was opened with the program, for its window: told by `offered`, and waiting until it is taken. */
  'file.offer': entry('command', offeredFileSchema, z.null()),
  'file.take': entry('command', nothing, z.array(offeredFileSchema)),

  /** Reports of faults, kept on this machine, newest first. */
  'report.list': entry('query', nothing, z.array(faultReportSchema)),
  'report.note': entry('command', pageFaultSchema, z.null()),
  'report.remove': entry('command', reportNameSchema, z.null()),

  /** The rack, or part of it, as a file. */
  'inOut.take': entry('task', takeOutSchema, madeFile),
  /** What bringing a file in would do, row by row; nothing is written. */
  'inOut.look': entry('task', offerSchema, lookSchema),
  /** Brings a file in, all of it or nothing; one undo takes it back. */
  'inOut.bring': entry('task', bringInSchema, broughtSchema),
  /** What a short code stands for, deleted things too; null: no such code was ever given. */
  'code.find': entry('query', z.strictObject({ code: z.string().max(200) }), foundByCodeSchema.nullable()),
  /** Labels as PDF, a page a sheet. */
  'label.make': entry('task', labelOrderSchema, madeFile),
} as const

export type CallName = keyof typeof calls
export type CallInput<N extends CallName> = z.input<(typeof calls)[N]['input']>
export type CallOutput<N extends CallName> = z.output<(typeof calls)[N]['output']>
