import { type ComponentType, type KeyboardEvent, lazy, Suspense, useId, useState } from 'react'
import { useTexts } from '../ui/texts.tsx'
import { AwakePanel, AwakeWord } from './AwakePanel.tsx'
import { ComparePanel } from './compare/ComparePanel.tsx'
import { FormulasPanel } from './formulas/FormulasPanel.tsx'
import { JobFilePanel } from './jobFile/JobFilePanel.tsx'
import { LookPanel } from './LookPanel.tsx'
import { PredictPanel } from './predict/PredictPanel.tsx'
import { ToolsPanel } from './tools/ToolsPanel.tsx'
import type { Moment, Running } from './useLiveGrind.ts'
import { ViewsPanel } from './ViewsPanel.tsx'
import './grindBar.css'

const OutPanel = lazy(() => import('./save/OutPanel.tsx'))
const ModelPanel = lazy(() => import('./model/ModelPanel.tsx'))

/** What a panel of the bar may need to know. */
export interface PanelProps {
  readonly running: Running
  readonly moment: Moment
  readonly lifted: boolean
}

/** The bar's panels by their names, left to right; their words stand under `grind:bar.<name>`. */
const panels: Readonly<Record<string, ComponentType<PanelProps>>> = {
  views: ViewsPanel,
  look: LookPanel,
  tools: ToolsPanel,
  compare: ComparePanel,
  predict: PredictPanel,
  formulas: FormulasPanel,
  out: OutPanel,
  jobFile: JobFilePanel,
  model: ModelPanel,
  awake: AwakePanel,
}

/** What can be laid out and put away again: one panel at a time, over the views, so that the model stays in sight. */
export const GrindBar = (props: PanelProps) => {
  const t = useTexts()
  const id = useId()
  const [open, setOpen] = useState<string | null>(null)
  const Panel = open === null ? null : panels[open]
  const shut = (event: KeyboardEvent<HTMLElement>): void => {
    if (event.key !== 'Escape' || open === null) return
    event.preventDefault()
    event.currentTarget.querySelector<HTMLElement>(`[data-panel="${open}"]`)?.focus()
    setOpen(null)
  }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Escape closes what a button in here opened; the buttons are the controls
    <div className="grind-laid" onKeyDown={shut}>
      <div className="grind-bar">
        {Object.keys(panels).map((name) => (
          <button
            key={name}
            type="button"
            className="word"
            data-panel={name}
            aria-expanded={open === name}
            aria-controls={id}
            onClick={() => setOpen(open === name ? null : name)}
          >
            {t(`grind:bar.${name}`)}
          </button>
        ))}
        <AwakeWord playing={props.moment.playing} />
      </div>
      <section
        id={id}
        className="grind-panel"
        hidden={Panel === null}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a long panel is scrolled by the keyboard too
        tabIndex={0}
        aria-label={t(`grind:bar.${open ?? 'label'}`)}
      >
        <Suspense>{Panel && <Panel {...props} />}</Suspense>
      </section>
    </div>
  )
}
