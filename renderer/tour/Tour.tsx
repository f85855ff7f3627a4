import { useEffect, useRef } from 'react'
import help from '../../assets/texts/en/help.json' with { type: 'json' }
import { go } from '../app/route.ts'
import { useApp } from '../app/store.ts'
import { takeByCode } from '../app/storeJob.ts'
import { addTexts, useTexts } from '../ui/texts.tsx'
import { pointAt } from './pointAt.ts'
import { type TourStep, tourSteps } from './steps.ts'
import './tour.css'
import { closeTour, useTour } from './useTour.ts'

addTexts('help', help)

const last = tourSteps.length - 1

/** Goes to a step's screen, with a tool in hand where there is one. */
const goTo = async ({ screen, part }: TourStep): Promise<void> => {
  const { tool, tools } = useApp.getState()
  const code = tool?.code ?? tools[0]?.code ?? null
  if (!tool && code !== null) await takeByCode(code)
  go(screen, code, part)
}

/** A step of the walk round: a band below the header that hides nothing, while what it speaks of is marked on the screen. */
export const Tour = ({ step }: { readonly step: number }) => {
  const t = useTexts()
  const heading = useRef<HTMLHeadingElement>(null)
  const here = tourSteps[step] as TourStep
  useEffect(() => {
    heading.current?.focus()
    void goTo(here)
    return pointAt(here.target)
  }, [here])
  const move = (by: number) => () => useTour.setState({ step: step + by })
  return (
    <section
      className="tour"
      aria-label={t('help:tour.label')}
      onKeyDown={(event) => event.key === 'Escape' && closeTour()}
    >
      <div className="tour-words">
        <h2 ref={heading} tabIndex={-1}>
          {t(`help:tour.step.${here.name}.title`)}
        </h2>
        <p>
          {t(`help:tour.step.${here.name}.text`)} {step === last && t('help:tour.again')}
        </p>
      </div>
      <div className="tour-keys">
        <span className="muted">{t('help:tour.count', { number: step + 1, count: tourSteps.length })}</span>
        <button type="button" className="word" disabled={step === 0} onClick={move(-1)}>
          {t('help:tour.back')}
        </button>
        {step < last && (
          <button type="button" className="key" onClick={move(1)}>
            {t('help:tour.next')}
          </button>
        )}
        <button type="button" className={step === last ? 'key' : 'word'} onClick={closeTour}>
          {t(step === last ? 'help:tour.done' : 'help:tour.end')}
        </button>
      </div>
    </section>
  )
}
