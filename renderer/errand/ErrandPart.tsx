import { placePath } from '../../main/contract/placePath.ts'
import { useApp } from '../app/store.ts'
import { CodeEntry } from '../scan/CodeEntry.tsx'
import { DayEntry, SelectEntry } from '../ui/Entry.tsx'
import { PersonEntry } from '../ui/PersonEntry.tsx'
import { useTexts } from '../ui/texts.tsx'
import { ScannedList } from './ScannedList.tsx'
import { fill, takeScanned, useErrand } from './useErrand.ts'
import './errand.css'

const errands = ['honed', 'dropped', 'nicked', 'place', 'lend', 'back', 'queue'] as const
/** What happens at the bench, and is signed. */
const signed: readonly string[] = ['honed', 'dropped', 'nicked']

/** Filled in once, then done to one tool after another as they are scanned, each with its own undo. */
export const ErrandPart = () => {
  const t = useTexts()
  const does = useErrand(({ filled }) => filled.does)
  return (
    <div className="errand">
      <p className="sentence">{t('errand:how')}</p>
      <div className="fields errand-fields">
        <SelectEntry
          name={t('errand:what')}
          value={does}
          options={errands.map((value) => ({ value, name: t(`errand:does.${value}`) }))}
          onChange={(value) => fill({ does: value })}
        />
        <Asked />
      </div>
      <CodeEntry name={t('errand:code')} action={t('errand:do')} onFound={takeScanned} camera />
      <ScannedList />
    </div>
  )
}

/** What the chosen errand asks for. */
const Asked = () => {
  const t = useTexts()
  const { does, placeId, person, dueBack, who } = useErrand(({ filled }) => filled)
  const places = useApp((app) => app.places)
  if (does === 'place')
    return (
      <SelectEntry
        name={t('errand:place')}
        value={placeId}
        options={[
          { value: '', name: t('errand:scanPlace') },
          ...places.map((each) => ({ value: each.id, name: placePath(places, each.id) })),
        ]}
        onChange={(value) => fill({ placeId: value })}
      />
    )
  if (does === 'lend')
    return (
      <>
        <PersonEntry name={t('rack:lend.person')} value={person} onChange={(value) => fill({ person: value })} />
        <DayEntry name={t('rack:lend.dueBack')} value={dueBack} onChange={(day) => fill({ dueBack: day })} />
      </>
    )
  if (!signed.includes(does)) return null
  return <PersonEntry name={t('errand:who')} value={who} onChange={(value) => fill({ who: value })} />
}
