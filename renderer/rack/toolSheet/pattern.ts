import { failed, ok, problem, type Result } from '../../../geometry/result.ts'
import { type ToolDraft, toolDraftSchema } from '../../../main/contract/entities.ts'

/** What tells one iron from another of its kind, and is not part of a pattern. */
const OWN_TO_EACH = ['name', 'note', 'own', 'lengthLeftMm', 'condition'] as const

/** @returns what a tool gives to others of its kind */
export const patternOf = (draft: ToolDraft): Partial<ToolDraft> =>
  Object.fromEntries(Object.entries(draft).filter(([key]) => !(OWN_TO_EACH as readonly string[]).includes(key)))

const shape: Readonly<Record<string, { safeParse(value: unknown): { readonly success: boolean } }>> =
  toolDraftSchema.shape

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text)
  } catch {
    return null
  }
}

/** Ids of what a pattern may speak of and the workshop still has. */
interface Standing {
  readonly places: ReadonlySet<string>
  readonly purposes: ReadonlySet<string>
}

/** A place or purpose that was taken away since would keep every iron of the pattern from being saved. */
const withoutGone = (begin: Partial<ToolDraft>, { places, purposes }: Standing): Partial<ToolDraft> => {
  const { placeId, curves } = begin
  return {
    ...begin,
    ...(placeId && !places.has(placeId) && { placeId: null }),
    ...(curves && { curves: curves.filter(({ purposeId }) => purposes.has(purposeId)) }),
  }
}

/** Entries that this program still knows, as far as they are sound. @returns them, or the problem `patternDamaged` */
export const readPattern = (text: string, standing: Standing): Result<Partial<ToolDraft>> => {
  const draft = parsed(text)
  if (typeof draft !== 'object' || draft === null || Array.isArray(draft)) return failed(problem('patternDamaged'))
  const sound = Object.entries(draft).filter(
    ([key, value]) => Object.hasOwn(shape, key) && shape[key]?.safeParse(value).success,
  )
  return ok(withoutGone(Object.fromEntries(sound) as Partial<ToolDraft>, standing))
}
