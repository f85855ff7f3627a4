import type { Tool } from '../../main/contract/entities.ts'
import type { OwnField } from '../../main/contract/extras.ts'
import { useApp } from '../app/store.ts'
import { shortDate } from '../ui/dates.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'

const ownInWords = ({ kind, unit }: OwnField, value: string | number): string =>
  kind === 'day' ? shortDate(String(value)) : [value, unit].filter(Boolean).join(' ')

/** What else is known of a tool, said only where it is: the rarer figures, and the workshop's own fields. */
export const MoreOfTool = ({ tool }: { readonly tool: Tool }) => {
  const t = useTexts()
  const figures = useFigures()
  const fields = useApp((app) => app.ownFields)
  const lines: readonly (readonly [string, string | null])[] = [
    [t('rack:more.maker'), tool.maker || null],
    [t('rack:more.condition'), tool.condition === 'good' ? null : t(`common:condition.${tool.condition}`)],
    [t('rack:more.taper'), tool.taperDeg === 0 ? null : figures.inWords(tool.taperDeg, 'deg', 1)],
    [t('rack:more.lengthLeft'), tool.lengthLeftMm === null ? null : figures.inWords(tool.lengthLeftMm, 'mm', 0)],
    [t('rack:more.temperLimit'), tool.temperLimitC === null ? null : figures.inWords(tool.temperLimitC, 'degC', 0)],
    [t('rack:more.backBevel'), tool.backBevelDeg === 0 ? null : figures.inWords(tool.backBevelDeg, 'deg', 1)],
    [t('rack:more.capSetback'), tool.capSetbackMm === null ? null : figures.inWords(tool.capSetbackMm, 'mm', 2)],
    ...fields.map((field) => {
      const value = tool.own[field.id]
      return [field.name, value === undefined ? null : ownInWords(field, value)] as const
    }),
  ]
  const known = lines.filter(([, words]) => words !== null)
  if (known.length === 0) return null
  return (
    <dl className="detail-more">
      {known.map(([name, words]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{words}</dd>
        </div>
      ))}
    </dl>
  )
}
