import { useId, useMemo, useRef, useState } from 'react'
import type { Job } from '../../../geometry/job.ts'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import type { Moment, Running } from '../useLiveGrind.ts'
import { grindTo, handRange, handTold, shareOf } from './hand.ts'
import { KindField } from './KindField.tsx'
import { useKeeping } from './keeping.ts'
import type { HandleKind } from './kind.ts'
import { atLimit, snapped } from './range.ts'
import type { Draft } from './useDraft.ts'
import { useKinds } from './useKinds.ts'
import { type SettingTold, useSetting } from './useSetting.ts'
import './flatHandles.css'

interface FlatHandlesProps extends SettingTold {
  readonly running: Running
  readonly moment: Moment
  readonly lifted: boolean
  readonly draft: Draft | null
}

/** Where no machine is drawn that could be taken hold of: what its handles do, as sliders with a field each. */
export const FlatHandles = ({ running, moment, lifted, draft, onDraft, onKeep }: FlatHandlesProps) => {
  const t = useTexts()
  const kinds = useKinds(running, lifted)
  const hand = useKeeping().may('hand') && !lifted
  if (kinds.length === 0 && !hand) return null
  return (
    <ul className="flat-handles" aria-label={t('handles:flat.list')}>
      {hand && <HandSlider running={running} moment={moment} />}
      {kinds.map((kind) => (
        <SetSlider
          key={kind.id}
          kind={kind}
          job={running.job}
          draft={draft?.id === kind.id ? draft.value : null}
          onDraft={onDraft}
          onKeep={onKeep}
        />
      ))}
    </ul>
  )
}

interface SetSliderProps extends SettingTold {
  readonly kind: HandleKind
  readonly job: Job
  readonly draft: number | null
}

/** One slide by pointer or one run of keys is one change. */
const SetSlider = ({ kind, job, draft, onDraft, onKeep }: SetSliderProps) => {
  const t = useTexts()
  const { told, run } = useSetting(kind, { onDraft, onKeep })
  // Null: no pointer slides it; a value of null: it was given up, and nothing counts until it is let go.
  const slid = useRef<{ value: number | null } | null>(null)
  const value = draft ?? kind.value
  const { value: figure, follows } = useMemo(() => kind.tell(value, kind.change(job, value)), [kind, job, value])
  const limit = atLimit(value, kind.range) && t('handles:limit')
  const said = [figure, follows, limit].filter(Boolean).join(', ')
  const letGo = (): void => {
    const held = slid.current
    slid.current = null
    if (held && held.value !== null) told.onKeep(held.value)
  }
  const giveUp = (): void => {
    if (slid.current) slid.current.value = null
    else run.giveUp()
    told.onDraft(null)
  }
  const take = (next: number): void => {
    if (!slid.current) run.to(next)
    else if (slid.current.value !== null) {
      slid.current.value = next
      told.onDraft(next)
    }
  }
  return (
    <li>
      <KindField kind={kind} />
      <input
        type="range"
        min={kind.range.min}
        max={kind.range.max}
        step={kind.range.snap}
        value={value}
        title={t('handles:hint.flat')}
        aria-label={kind.name}
        aria-valuetext={said}
        onPointerDown={() => {
          run.keep()
          slid.current = { value }
        }}
        onPointerUp={letGo}
        onPointerCancel={() => {
          giveUp()
          slid.current = null
        }}
        onBlur={run.keep}
        onKeyDown={({ key }) => key === 'Escape' && giveUp()}
        onChange={({ target }) => take(snapped(Number(target.value), kind.range))}
      />
      <span aria-hidden="true">{said}</span>
    </li>
  )
}

/** The blade in the hand: slid across by the pointer it grinds for as long as it is held, by keys on its way. */
const HandSlider = ({ running: { job, live }, moment }: Pick<FlatHandlesProps, 'running' | 'moment'>) => {
  const t = useTexts()
  const figures = useFigures()
  const id = useId()
  const holds = useRef(false)
  const [heldMm, setHeldMm] = useState<number | null>(null)
  const range = handRange(job)
  const placeMm = snapped(heldMm ?? moment.loadPlaceMm, range)
  const { value, follows } = handTold(placeMm, t, figures)
  const said = `${value} ${follows}`
  const hold = (mm: number): void => {
    setHeldMm(mm)
    live.hold(shareOf(job, mm))
  }
  const letGo = (): void => {
    if (!holds.current) return
    holds.current = false
    setHeldMm(null)
    live.release()
  }
  return (
    <li>
      <label htmlFor={id}>{t('handles:hand.name')}</label>
      <input
        id={id}
        type="range"
        min={range.min}
        max={range.max}
        step={range.snap}
        value={placeMm}
        title={t('handles:hint.flatHand')}
        aria-valuetext={said}
        onPointerDown={() => {
          holds.current = true
          hold(placeMm)
        }}
        onPointerUp={letGo}
        onPointerCancel={letGo}
        onKeyDown={(event) => {
          if (event.key !== ' ') return
          event.preventDefault()
          grindTo(live, job, placeMm)
        }}
        onChange={({ target }) => {
          const mm = Number(target.value)
          if (holds.current) hold(mm)
          else grindTo(live, job, mm)
        }}
      />
      <span aria-hidden="true">{said}</span>
    </li>
  )
}
