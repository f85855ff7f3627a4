import type { Problem } from '../../geometry/result.ts'
import type { InOutNoun } from '../contract/inOut.ts'

/** A record as a file offers it, before the schema has seen it. */
export interface OfferedRow {
  /** Where it stands: the line of a table, or the place in a document's list, from 1. */
  readonly row: number
  /** Id and code as the file has them; null: none. */
  readonly id: string | null
  readonly code: string | null
  /** What the file says, by key; a key that is missing is not spoken of. */
  readonly says: Readonly<Record<string, unknown>>
  /** Cells that could not be read; `path` is the key. */
  readonly problems: readonly Problem[]
}

/** What a file offers of one noun. */
export interface Offered {
  readonly noun: InOutNoun
  readonly rows: readonly OfferedRow[]
  /** What tells that a row is a record of the rack: a table goes by its codes, our own document by its ids. */
  readonly keyedBy: 'code' | 'id'
  /** Heads by key, where they differ from the keys. */
  readonly heads: ReadonlyMap<string, string>
}

/** All that a file offers. */
export interface Offer {
  readonly nouns: readonly Offered[]
  /** Pictures by hash, from a bundle. */
  readonly photos: ReadonlyMap<string, Uint8Array>
}
