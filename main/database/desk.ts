import type { Access } from './access.ts'

/** What every service works with. Clock and ids come from outside, so that tests and demo data are the same each time. */
export interface Desk {
  readonly access: Access
  now(): Date
  newId(): string
  /** Who sits here, for the change log. */
  readonly who: string
}
