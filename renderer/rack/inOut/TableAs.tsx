import { type ColumnUse, delimiters, tableNouns } from '../../../main/contract/inOut.ts'
import { SelectEntry } from '../../ui/Entry.tsx'
import { useTexts } from '../../ui/texts.tsx'
import type { Look, Manner } from './useBringIn.ts'

type Table = NonNullable<Look['table']>

interface TableAsProps {
  readonly look: Look
  readonly table: Table
  readonly onReadAs: (manner: Manner) => void
}

/** How a table is read: of what, parted by what, and each column as what. It is guessed, and any of it can be said otherwise. */
export const TableAs = ({ look, table, onReadAs }: TableAsProps) => {
  const t = useTexts()
  const noun = look.noun ?? 'tool'
  const uses: readonly ColumnUse[] = table.columns.map(({ key, lengthUnit }) => ({ key, lengthUnit }))
  const read = (more: Manner): void => onReadAs({ noun, delimiter: table.delimiter, columns: [...uses], ...more })
  return (
    <>
      <div className="in-out-row">
        <SelectEntry
          name={t('inOut:in.noun')}
          value={noun}
          options={tableNouns.map((value) => ({ value, name: t(`inOut:many.${value}`) }))}
          onChange={(next) => read({ noun: next, columns: null })}
        />
        <SelectEntry
          name={t('inOut:in.delimiter')}
          value={table.delimiter}
          options={delimiters.map((value) => ({ value, name: t(`inOut:in.delimiters.${value}`) }))}
          onChange={(delimiter) => read({ delimiter, columns: null })}
        />
      </div>
      <details open={table.columns.some(({ hasKey }) => !hasKey)}>
        <summary>{t('inOut:in.columns')}</summary>
        <Columns table={table} uses={uses} onUse={(columns) => read({ columns })} />
      </details>
      {!table.keyed && <p className="caution">{t('inOut:in.notKeyed')}</p>}
      <Rows table={table} />
    </>
  )
}

interface ColumnsProps {
  readonly table: Table
  readonly uses: readonly ColumnUse[]
  readonly onUse: (uses: ColumnUse[]) => void
}

/** Which entry is taken by a column now; one that another column had is given up there. */
const withUse = (uses: readonly ColumnUse[], at: number, use: ColumnUse): ColumnUse[] =>
  uses.map((each, i) => {
    if (i === at) return use
    return use.key !== null && each.key === use.key ? { ...each, key: null } : each
  })

const LEFT_OUT = ''

const Columns = ({ table, uses, onUse }: ColumnsProps) => {
  const t = useTexts()
  const keys = [
    { value: LEFT_OUT, name: t('inOut:in.leftOut') },
    ...table.keys.map(({ key, name }) => ({ value: key, name })),
  ]
  return (
    <div className="fields in-out-columns">
      {table.columns.map(({ header, isLength }, at) => {
        const use = uses[at] as ColumnUse
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: columns have no other name of their own, and never change places
          <div key={at}>
            <SelectEntry
              name={t('inOut:in.column', { header })}
              value={use.key ?? LEFT_OUT}
              options={keys}
              onChange={(key) => onUse(withUse(uses, at, { ...use, key: key === LEFT_OUT ? null : key }))}
            />
            {isLength && (
              <SelectEntry<ColumnUse['lengthUnit']>
                name={t('inOut:in.unit', { header })}
                value={use.lengthUnit}
                options={(['mm', 'inch', 'thou'] as const).map((value) => ({
                  value,
                  name: t(`inOut:in.units.${value}`),
                }))}
                onChange={(lengthUnit) => onUse(withUse(uses, at, { ...use, lengthUnit }))}
              />
            )}
          </div>
        )
      })}
    </div>
  )
}

/** The first rows as they stand in the file. */
const Rows = ({ table }: { readonly table: Table }) => {
  const t = useTexts()
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reached by the keyboard
    <section className="in-out-rows" tabIndex={0} aria-label={t('inOut:in.rows')}>
      <table>
        <caption>{t('inOut:in.rows')}</caption>
        <thead>
          <tr>
            <th scope="col">{t('inOut:in.line')}</th>
            {table.columns.map(({ header }, at) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: as above
              <th key={at} scope="col">
                {header}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map(({ row, cells }) => (
            <tr key={row}>
              <th scope="row">{row}</th>
              {table.columns.map((_, at) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: as above
                <td key={at}>{cells[at]}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
