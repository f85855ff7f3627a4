import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react'
import { type QuantityPath, quantityAt } from '../../geometry/quantities.ts'
import type { Problem } from '../../geometry/result.ts'
import type { FigureSize } from './FigureText.tsx'
import { type FieldQuantity, readField, restText, stepped } from './fieldDraft.ts'
import { problemSentence, useTexts } from './texts.tsx'
import { useFigures } from './useFigure.ts'

/** What a commit answers: false when the figure was not taken, so that it stays in the field to be mended. */
// biome-ignore lint/suspicious/noConfusingVoidType: a handler that answers nothing has taken the figure
export type Committed = boolean | void | Promise<boolean | void>

export interface FigureFieldProps {
  readonly quantity: QuantityPath
  /** In the quantity's unit; null: nothing known. */
  readonly value: number | null
  readonly onCommit: (value: number | null) => Committed
  /** Default: the quantity's name. */
  readonly label?: string
  readonly size?: FigureSize
  /** An empty field is an answer: null. */
  readonly allowEmpty?: boolean
  /** Limits other than the table's, where the field shows a figure reckoned from the quantity. */
  readonly range?: { readonly min: number; readonly max: number }
  /** A problem found outside the field, already in words. */
  readonly problem?: string | null
  /** Called when Escape puts the last good figure back. */
  readonly onRestore?: () => void
  readonly note?: string
}

/** How many steps Shift makes of one. */
const SHIFT_STEPS = 10

/** A figure to type: underlined, with its unit, its name below, and its problem in place. */
export const FigureField = (props: FigureFieldProps) => {
  const { quantity, value, size = 'medium', note } = props
  const t = useTexts()
  const id = useId()
  const field = useFieldDraft(props)
  const trouble = field.problem ?? (field.mending ? null : (props.problem ?? null))
  const table = quantityAt(quantity)
  const unit = useFigures().plain(value ?? 0, table.unit, table.decimals).unit
  return (
    <div className="figure figure-field" data-size={size} data-wrong={trouble !== null} data-quiet={field.quiet}>
      <span className="figure-entry" data-empty={field.text === ''}>
        <input
          id={`${id}-input`}
          type="text"
          role="spinbutton"
          autoComplete="off"
          spellCheck={false}
          maxLength={40}
          size={Math.max(3, field.text.length)}
          value={field.text}
          aria-valuenow={value ?? undefined}
          aria-valuetext={value === null ? t('common:field.empty') : `${field.text} ${unit}`.trim()}
          aria-invalid={trouble !== null}
          aria-describedby={`${id}-problem ${id}-sentence`}
          onChange={(event) => field.type(event.target.value)}
          onKeyDown={field.key}
          onBlur={() => field.commit()}
        />
        {unit !== '' && <span className="figure-unit">{unit}</span>}
      </span>
      <label className="figure-name" htmlFor={`${id}-input`}>
        {props.label ?? t(`quantities:${quantity}.name`)}
      </label>
      {note !== undefined && <span className="figure-note">{note}</span>}
      <span className="figure-problem" id={`${id}-problem`}>
        {trouble}
      </span>
      <span className="figure-sentence" id={`${id}-sentence`}>
        {t(`quantities:${quantity}.sentence`)}
      </span>
    </div>
  )
}

interface FieldDraft {
  readonly text: string
  readonly problem: string | null
  /** Something else is being typed than what was found wrong. */
  readonly mending: boolean
  /** Escape was pressed: the explanation leaves, too. */
  readonly quiet: boolean
  type(text: string): void
  key(event: KeyboardEvent<HTMLInputElement>): void
  commit(): void
}

const useFieldDraft = (props: FigureFieldProps): FieldDraft => {
  const { quantity, value, onCommit, allowEmpty = false, range, onRestore } = props
  const t = useTexts()
  const { lengthUnit } = useFigures()
  const [draft, setDraft] = useState<string | null>(null)
  const [found, setFound] = useState<Problem | null>(null)
  const [refused, setRefused] = useState<string | null>(null)
  const [quiet, setQuiet] = useState(false)
  // What stood in the field when the hand began to type there; null: nothing is being typed.
  const typedOver = useRef<string | null>(null)
  // Figures of this field on their way, as they will stand there once they are kept.
  const sent = useRef<readonly string[]>([])
  const table: FieldQuantity = { ...quantityAt(quantity), ...range }
  const rest = restText(value, table, lengthUnit)

  const settle = () => {
    typedOver.current = null
    setDraft(null)
    setFound(null)
  }
  // A figure read in one unit is not what stands there in another.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the unit is the trigger
  useEffect(settle, [lengthUnit])
  // A figure from elsewhere (undo, a preset) replaces one that was not taken. What the hand is typing stays, and when a
  // figure that the field sent itself comes back as kept, so does whatever was typed after it, with what is wrong with it.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the value is the trigger
  useEffect(() => {
    const own = sent.current.indexOf(rest)
    if (own >= 0) sent.current = sent.current.slice(own + 1)
    else if (typedOver.current === null) settle()
  }, [value])

  const take = async (typed: string) => {
    const read = readField(typed, table, lengthUnit, allowEmpty)
    if (!read.ok) return setFound(read.problems[0] ?? null)
    setFound(null)
    const asKept = restText(read.value, table, lengthUnit)
    sent.current = [...sent.current, asKept]
    const taken = (await onCommit(read.value)) !== false
    if (!taken) sent.current = sent.current.filter((text) => text !== asKept)
    setRefused(taken ? null : typed)
    if (taken) setDraft((now) => (now === typed ? null : now))
  }
  const type = (text: string) => {
    typedOver.current ??= rest
    setDraft(text)
    setFound(null)
  }
  const commit = () => {
    const before = typedOver.current
    typedOver.current = null
    setQuiet(false)
    if (draft === null || draft.trim() === rest || draft.trim() === before) return settle()
    void take(draft)
  }
  const key = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') {
      // The figure is taken first; a form around the field is sent by its own key.
      event.preventDefault()
      return commit()
    }
    if (event.key === 'Escape') {
      settle()
      setQuiet(true)
      onRestore?.()
    }
    const direction = { ArrowUp: 1, ArrowDown: -1 }[event.key]
    if (direction === undefined) return
    event.preventDefault()
    typedOver.current ??= rest
    setDraft(stepped(draft ?? rest, direction * (event.shiftKey ? SHIFT_STEPS : 1), table, lengthUnit))
  }
  const mending = draft !== null && draft !== refused
  return { text: draft ?? rest, problem: found && problemSentence(t, found), mending, quiet, type, key, commit }
}
