import { type FormEvent, useEffect, useRef, useState } from 'react'
import type { Problem } from '../../../geometry/result.ts'
import type { CallInput, CallOutput } from '../../../main/contract/calls.ts'
import type { ToolDraft } from '../../../main/contract/entities.ts'
import { manyKeys } from '../../../main/contract/many.ts'
import { useApp } from '../../app/store.ts'
import { call } from '../../app/transport.ts'
import { useTask } from '../../app/useTask.ts'
import { NoteEntry } from '../../ui/Entry.tsx'
import type { FieldSpec } from '../../ui/fieldSpec.ts'
import { Problems } from '../../ui/Problems.tsx'
import { RecordField } from '../../ui/RecordField.tsx'
import { Sheet } from '../../ui/Sheet.tsx'
import { Tick } from '../../ui/Tick.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { newTool, toolFields } from '../drafts.ts'
import { editMany } from '../edits.ts'
import { ManyOwnFields, type OwnSet } from './ManyOwnFields.tsx'
import { Working } from './Working.tsx'

type Which = CallInput<'tools.edit'>['which']
type SetMany = CallInput<'tools.edit'>['set']
type Values = Readonly<Record<string, unknown>>

interface ManySheetProps {
  readonly which: Which
  readonly count: number
  readonly onClose: () => void
}

/** What is ticked is set for all chosen tools; all else stays as it is with each. */
export const ManySheet = ({ which, count, onClose }: ManySheetProps) => {
  const t = useTexts()
  const places = useApp((app) => app.places)
  const fields = toolFields(places).filter(({ key }) => (manyKeys as readonly string[]).includes(key))
  const [set, setSet] = useState<Values>({})
  const [own, setOwn] = useState<OwnSet>({})
  const [noteAdded, setNoteAdded] = useState('')
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const asked = {
    ...set,
    ...(Object.keys(own).length > 0 && { own }),
    ...(noteAdded.trim() !== '' && { noteAdded }),
  } as SetMany
  const { outlook, refused } = useOutlook(which, asked)
  const task = useTask()
  const saving = task.done !== null
  const key = useRef<HTMLButtonElement>(null)
  const save = async (event: FormEvent) => {
    event.preventDefault()
    setProblems([])
    const saved = await task.run((callId) => editMany(which, asked, callId))
    if (saved.ok) onClose()
    else setProblems(saved.problems)
  }
  // The key that stopped it is gone by then.
  useEffect(() => {
    if (!saving && problems.length > 0) key.current?.focus()
  }, [saving, problems])
  const nothing = Object.keys(asked).length === 0
  return (
    <Sheet title={t('many:title', { count })} onClose={onClose}>
      <form onSubmit={(event) => void save(event)} noValidate>
        <p>{t('many:how')}</p>
        <div className="many-fields">
          {fields.map((field) => (
            <ManyField key={field.key} field={field} set={set} onSet={setSet} />
          ))}
          <ManyOwnFields set={own} onSet={setOwn} />
          <NoteEntry name={t('many:note')} value={noteAdded} onChange={setNoteAdded} />
        </div>
        <Problems problems={problems.length > 0 ? problems : refused} />
        <p className="sheet-keys">
          <button ref={key} type="submit" className="key key-main" disabled={nothing || saving || refused.length > 0}>
            {t('many:save')}
          </button>
          <Working task={task} says={t('many:saving', { count })} />
          <span role="status">
            {!saving && !nothing && outlook && t('many:outlook', { count: outlook.changed, of: outlook.tools })}
          </span>
        </p>
      </form>
    </Sheet>
  )
}

/** Each look reads every chosen tool, so it waits until nothing was typed for so long (ms). */
const REST_MS = 200

/** @returns what the change would do, asked for as it is put together, and why it would be refused */
const useOutlook = (which: Which, set: SetMany) => {
  const [found, setFound] = useState<{ outlook: CallOutput<'tools.look'> | null; refused: readonly Problem[] }>({
    outlook: null,
    refused: [],
  })
  const asked = JSON.stringify({ which, set })
  useEffect(() => {
    let wanted = true
    const look = async () => {
      const looked = await call('tools.look', JSON.parse(asked) as CallInput<'tools.look'>)
      if (wanted)
        setFound(looked.ok ? { outlook: looked.value, refused: [] } : { outlook: null, refused: looked.problems })
    }
    const timer = window.setTimeout(() => void look(), REST_MS)
    return () => {
      wanted = false
      window.clearTimeout(timer)
    }
  }, [asked])
  return found
}

/** What a field begins with when it is ticked: nothing, where it may be empty. */
const firstOf = ({ kind, key, ...field }: FieldSpec<ToolDraft>): unknown => {
  if (kind === 'words') return ''
  if (kind === 'pick' || ('allowEmpty' in field && field.allowEmpty)) return null
  return newTool[key] ?? null
}

interface ManyFieldProps {
  readonly field: FieldSpec<ToolDraft>
  readonly set: Values
  readonly onSet: (set: Values) => void
}

/** One field with the tick that takes it into the change. */
const ManyField = ({ field, set, onSet }: ManyFieldProps) => {
  const t = useTexts()
  const { key } = field
  const ticked = key in set
  const tick = (next: boolean) => {
    const { [key]: _, ...others } = set
    onSet(next ? { ...others, [key]: firstOf(field) } : others)
  }
  return (
    <div className="many-field">
      <Tick name={t(`many:set`, { field: t(`rack:field.${key}`) })} checked={ticked} onTick={tick} />
      {ticked && (
        <RecordField
          texts="rack:field"
          field={field}
          value={set[key]}
          problem={null}
          onSet={(value) => onSet({ ...set, [key]: value })}
        />
      )}
    </div>
  )
}
