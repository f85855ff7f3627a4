import type { ComponentType } from 'react'
import type { QuantityPath } from '../../geometry/quantities.ts'

/** What a field that is made for one record is given. */
export interface MadeFieldProps {
  readonly name: string
  readonly value: unknown
  /** In words. */
  readonly problem: string | null
  readonly onChange: (value: unknown) => void
}

interface Placed<D> {
  readonly key: keyof D & string
  /** Catalogue key of the heading that it stands under with its neighbours; none: no heading. */
  readonly section?: string
}

/** A field of a record: a figure of the quantity table, words, one of a few, or made for the record. */
export type FieldSpec<D> = Placed<D> &
  (
    | { readonly kind: 'figure'; readonly quantity: QuantityPath; readonly allowEmpty?: boolean }
    | { readonly kind: 'words'; readonly required?: boolean }
    | { readonly kind: 'note' }
    /** One of some records; empty: none of them. */
    | { readonly kind: 'pick'; readonly options: readonly { readonly value: string; readonly name: string }[] }
    | { readonly kind: 'choice'; readonly options: readonly string[]; readonly texts: string }
    | { readonly kind: 'made'; readonly Field: ComponentType<MadeFieldProps> }
  )

/** @returns fields under the same heading. @param section its catalogue key */
export const under = <D>(section: string, fields: readonly FieldSpec<D>[]): readonly FieldSpec<D>[] =>
  fields.map((field) => ({ ...field, section }))

/** @returns neighbours of the same heading together, in their order */
export const sectionsOf = <D>(
  fields: readonly FieldSpec<D>[],
): readonly { readonly section: string | undefined; readonly fields: readonly FieldSpec<D>[] }[] =>
  [...Map.groupBy(fields, ({ section }) => section)].map(([section, each]) => ({ section, fields: each }))
