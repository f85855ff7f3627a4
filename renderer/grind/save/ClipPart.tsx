import { useState } from 'react'
import { quantities } from '../../../geometry/quantities.ts'
import { FigureField } from '../../ui/FigureField.tsx'
import { Options } from '../../ui/Options.tsx'
import { useTexts } from '../../ui/texts.tsx'
import type { Moment, Running } from '../useLiveGrind.ts'
import type { ClipForm } from './clip.ts'
import { frameCount } from './clipPlan.ts'
import { OutPart } from './OutPart.tsx'
import type { Pictured } from './pictured.ts'
import { useClip } from './useClip.ts'

/** Times slower than at the wheel. */
const slownesses = ['1', '2', '4', '8'] as const

interface ClipPartProps {
  readonly view: Pictured | undefined
  readonly running: Running
  readonly moment: Moment
}

/** A stretch of the grind as a film, every picture at its exact moment. */
export const ClipPart = (props: ClipPartProps) => {
  const t = useTexts()
  if (!('VideoEncoder' in window))
    return (
      <OutPart heading={t('out:clip.heading')} sentence={t('out:clip.noEncoder')}>
        {null}
      </OutPart>
    )
  return <ClipForms {...props} />
}

/** Where a clip begins when nothing was chosen: at the sweep shown, but with a whole one left to show. */
const firstSweep = ({ sweep }: Moment, sweeps: number): number => Math.max(Math.min(Math.floor(sweep), sweeps - 1), 0)

const ClipForms = ({ running, moment, view }: ClipPartProps) => {
  const t = useTexts()
  const { sweeps } = running.shape
  const [fromSweep, setFromSweep] = useState(() => firstSweep(moment, sweeps))
  const [toSweep, setToSweep] = useState(() => firstSweep(moment, sweeps) + 1)
  const [framesPerSecond, setFramesPerSecond] = useState(quantities.out.framesPerSecond.defaultValue as number)
  const [slower, setSlower] = useState<(typeof slownesses)[number]>('1')
  const [widthPx, setWidthPx] = useState(quantities.out.clipWidthPx.defaultValue as number)
  const [form, setForm] = useState<ClipForm>('webm')
  const clip = useClip(running, moment)
  const plan = { fromSweep, toSweep, framesPerSecond, slower: Number(slower) }
  const range = { min: 0, max: sweeps }
  return (
    <OutPart heading={t('out:clip.heading')} sentence={t('out:clip.sentence')} problems={clip.problems}>
      <div className="out-fields">
        <FigureField
          quantity="out.fromSweep"
          value={fromSweep}
          range={range}
          onCommit={(value) => value !== null && setFromSweep(value)}
        />
        <FigureField
          quantity="out.toSweep"
          value={toSweep}
          range={range}
          onCommit={(value) => value !== null && setToSweep(value)}
        />
        <FigureField
          quantity="out.framesPerSecond"
          value={framesPerSecond}
          onCommit={(value) => value !== null && setFramesPerSecond(value)}
        />
        <FigureField
          quantity="out.clipWidthPx"
          value={widthPx}
          onCommit={(value) => value !== null && setWidthPx(value)}
        />
      </div>
      <Options
        legend={t('out:clip.speed')}
        options={slownesses.map((value) => ({ value, name: t(`out:clip.slower.${value}`) }))}
        value={slower}
        onChoose={setSlower}
      />
      <Options
        legend={t('out:clip.form')}
        options={(['webm', 'mp4'] as const).map((value) => ({ value, name: t(`out:clip.forms.${value}`) }))}
        value={form}
        onChoose={setForm}
      />
      {clip.share === null ? (
        <button
          type="button"
          className="key"
          disabled={!view}
          onClick={() => view && void clip.make({ plan, form, view, widthPx })}
        >
          {t('out:clip.save', { count: Math.max(frameCount(plan), 0) })}
        </button>
      ) : (
        <Making share={clip.share} onCancel={clip.cancel} />
      )}
    </OutPart>
  )
}

/** How far a clip is, and the way out. */
const Making = ({ share, onCancel }: { readonly share: number; readonly onCancel: () => void }) => {
  const t = useTexts()
  return (
    <div className="out-making">
      <label>
        {t('out:clip.making', { percent: Math.floor(100 * share) })}
        <progress max={1} value={share} />
      </label>
      <button type="button" className="key" onClick={onCancel}>
        {t('out:clip.cancel')}
      </button>
    </div>
  )
}
