import { conditions, toolKinds } from '../../main/contract/entities.ts'
import type { Filter } from '../../main/contract/finding.ts'
import { placePath } from '../../main/contract/placePath.ts'
import { useApp } from '../app/store.ts'
import { DayEntry, SelectEntry } from '../ui/Entry.tsx'
import { useTexts } from '../ui/texts.tsx'
import { narrow, useFinding } from './finding.ts'
import { KeptFilters } from './KeptFilters.tsx'

/** Conditions of the panel; the quick ones stand above. */
const MORE = ['kinds', 'placeId', 'holderId', 'purposeId', 'conditions', 'edge', 'bevelSide', 'notSeenSince'] as const

/** Conditions that combine, and ways of looking that are kept. */
export const MoreFilters = () => {
  const t = useTexts()
  const filter = useFinding((finding) => finding.filter)
  const asked = MORE.filter((key) => filter[key] !== undefined).length
  return (
    <details className="more-filters">
      <summary>{asked === 0 ? t('rack:narrow.more') : t('rack:narrow.moreAsked', { count: asked })}</summary>
      <div className="fields">
        <Choices filter={filter} />
        <DayEntry
          name={t('rack:narrow.notSeenSince')}
          value={filter.notSeenSince ?? ''}
          onChange={(day) => narrow({ notSeenSince: day || undefined })}
        />
      </div>
      <KeptFilters />
    </details>
  )
}

interface Choice {
  readonly key: 'kinds' | 'placeId' | 'holderId' | 'purposeId' | 'conditions' | 'edge' | 'bevelSide'
  readonly options: readonly { readonly value: string; readonly name: string }[]
}

/** Conditions of which any of several would do are asked one at a time here. */
const lists: readonly Choice['key'][] = ['kinds', 'conditions']

const Choices = ({ filter }: { readonly filter: Filter }) => {
  const t = useTexts()
  const { places, people, purposes } = useApp()
  const named = (values: readonly string[], texts: string) =>
    values.map((value) => ({ value, name: t(`${texts}.${value}`) }))
  const records = (all: readonly { readonly id: string; readonly name: string }[]) =>
    all.map(({ id, name }) => ({ value: id, name }))
  const choices: readonly Choice[] = [
    { key: 'kinds', options: named(toolKinds, 'common:toolKind') },
    { key: 'placeId', options: records(places.map((each) => ({ ...each, name: placePath(places, each.id) }))) },
    { key: 'holderId', options: records(people) },
    { key: 'purposeId', options: records(purposes) },
    { key: 'conditions', options: named(conditions, 'common:condition') },
    { key: 'edge', options: named(['straight', 'curved'], 'rack:narrow.edgeIs') },
    { key: 'bevelSide', options: named(['up', 'down'], 'common:bevelSide') },
  ]
  return choices
    .filter(({ options }) => options.length > 0)
    .map(({ key, options }) => {
      const now = filter[key]
      const set = (value: string) => {
        const said = lists.includes(key) ? [value] : value
        narrow({ [key]: value === '' ? undefined : said } as Partial<Filter>)
      }
      return (
        <SelectEntry
          key={key}
          name={t(`rack:narrow.${key}`)}
          value={(Array.isArray(now) ? now[0] : now) ?? ''}
          options={[{ value: '', name: t('rack:narrow.any') }, ...options]}
          onChange={set}
        />
      )
    })
}
