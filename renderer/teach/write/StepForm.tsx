import { type Lesson, type LessonStep, lessonCautions, lessonViews } from '../../../geometry/lesson/lesson.ts'
import { NoteEntry, TextEntry } from '../../ui/Entry.tsx'
import { Tick } from '../../ui/Tick.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { AskForm } from './AskForm.tsx'
import { changeStep } from './draft.ts'
import { FigureNames } from './FigureNames.tsx'
import { MoveForm, SetForm } from './PlacesForm.tsx'

interface StepFormProps {
  readonly lesson: Lesson
  readonly k: number
}

/** One step: what is said, what the model is set to, what may be moved, what is asked. */
export const StepForm = ({ lesson, k }: StepFormProps) => {
  const t = useTexts()
  const step = lesson.steps[k] as LessonStep
  const toggled = <T extends string>(list: readonly T[], name: T, on: boolean): T[] =>
    on ? [...list, name] : list.filter((each) => each !== name)
  return (
    <section className="write-step" aria-label={t('write:step', { step: k + 1 })}>
      <TextEntry name={t('write:heading')} value={step.heading} onChange={(heading) => changeStep({ heading })} />
      <NoteEntry
        name={t('write:text')}
        value={step.text.join('\n')}
        onChange={(text) => changeStep({ text: text.split('\n') })}
      />
      <FigureNames cases={Object.keys(lesson.cases)} />
      <SetForm set={step.set} onChange={(set) => changeStep({ set })} />
      <MoveForm move={step.move} onChange={(move) => changeStep({ move })} />
      <fieldset className="write-ticks">
        <legend>{t('write:views')}</legend>
        {lessonViews.map((view) => (
          <Tick
            key={view}
            name={t(`write:view.${view}`)}
            checked={step.views.includes(view)}
            onTick={(on) => changeStep({ views: toggled(step.views, view, on) })}
          />
        ))}
        <Tick name={t('write:run')} checked={step.run} onTick={(run) => changeStep({ run })} />
      </fieldset>
      <AskForm ask={step.ask} onChange={(ask) => changeStep({ ask })} />
      <fieldset className="write-ticks">
        <legend>{t('write:cautions')}</legend>
        {lessonCautions.map((caution) => (
          <Tick
            key={caution}
            name={t(caution === 'all' ? 'write:allCautions' : `teach:caution.${caution}`)}
            checked={step.cautions.includes(caution)}
            onTick={(on) => changeStep({ cautions: toggled(step.cautions, caution, on) })}
          />
        ))}
      </fieldset>
      <NoteEntry name={t('teach:notes')} value={step.notes} onChange={(notes) => changeStep({ notes })} />
    </section>
  )
}
