import { useRef } from 'react'
import { go } from '../../app/route.ts'
import { sayProblem, useApp } from '../../app/store.ts'
import { changeTold } from '../../app/storeRack.ts'
import { NoteEntry, TextEntry } from '../../ui/Entry.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { useFocusKept } from '../../ui/useFocusKept.ts'
import { LessonProblems } from '../LessonProblems.tsx'
import { openLesson } from '../teaching.ts'
import { addStep, changeLesson, type Draft, moveStep, openStep, putAway, removeStep } from './draft.ts'
import { StepForm } from './StepForm.tsx'
import { useChecked } from './useChecked.ts'

/** A lesson in writing: what it is called, its steps, and what is still wrong with it. */
export const Editor = ({ draft }: { readonly draft: Draft }) => {
  const t = useTexts()
  const { lesson, step } = draft
  const checked = useChecked(lesson)
  const place = useRef<HTMLElement>(null)
  useFocusKept(place, `${step} ${lesson.steps.length}`)
  return (
    <div className="write">
      <section className="write-lesson" ref={place} tabIndex={-1} aria-label={t('write:lesson')}>
        <TextEntry
          name={t('write:title')}
          value={lesson.title}
          onChange={(title) => changeLesson({ title })}
          required
        />
        <TextEntry name={t('write:id')} value={lesson.id} onChange={(id) => changeLesson({ id })} required />
        <NoteEntry name={t('write:about')} value={lesson.about} onChange={(about) => changeLesson({ about })} />
        <OfIron />
        <Steps draft={draft} />
        <div aria-live="polite">
          {checked === null ? (
            <p className="muted">{t('write:checking')}</p>
          ) : checked.length === 0 ? (
            <p>{t('write:sound')}</p>
          ) : (
            <LessonProblems problems={checked} by="step" />
          )}
        </div>
        <Keep draft={draft} sound={checked?.length === 0} />
      </section>
      <StepForm key={step} lesson={lesson} k={step} />
    </div>
  )
}

/** The state that a lesson begins with is a job: that of the iron in hand, or the one it came with. */
const OfIron = () => {
  const t = useTexts()
  const tool = useApp((app) => app.tool)
  const job = useApp((app) => app.job)
  if (!tool || !job) return <p className="muted">{t('write:noIron')}</p>
  return (
    <button
      type="button"
      className="word"
      onClick={() => changeLesson({ job: job.document as unknown as Record<string, unknown> })}
    >
      {t('write:ofIron', { name: tool.name })}
    </button>
  )
}

const Steps = ({ draft: { lesson, step } }: { readonly draft: Draft }) => {
  const t = useTexts()
  return (
    <>
      <ol className="write-steps">
        {lesson.steps.map((each, k) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a step is known by its place alone
          <li key={k}>
            <button
              type="button"
              className="word"
              aria-current={k === step ? 'step' : undefined}
              onClick={() => openStep(k)}
            >
              {k + 1}. {each.heading || t('write:unnamed')}
            </button>
          </li>
        ))}
      </ol>
      <div className="class-keys">
        <button type="button" className="word" onClick={() => addStep(t('write:newStep'))}>
          {t('write:add')}
        </button>
        <button type="button" className="word" disabled={step === 0} onClick={() => moveStep(-1)}>
          {t('write:up')}
        </button>
        <button type="button" className="word" disabled={step === lesson.steps.length - 1} onClick={() => moveStep(1)}>
          {t('write:down')}
        </button>
        <button type="button" className="word" disabled={lesson.steps.length === 1} onClick={removeStep}>
          {t('write:remove')}
        </button>
      </div>
    </>
  )
}

const Keep = ({ draft: { lesson, own }, sound }: { readonly draft: Draft; readonly sound: boolean }) => {
  const t = useTexts()
  const code = useApp((app) => app.tool?.code ?? null)
  const text = JSON.stringify(lesson)
  const keep = async () => {
    const told = () => [`common:message.lesson.${own ? 'edit' : 'add'}`, { label: lesson.title }] as const
    const kept = own
      ? await changeTold('lesson.edit', { id: own.id, version: own.version, text }, told)
      : await changeTold('lesson.add', { text }, told)
    if (kept.ok) putAway()
    else if (kept.problems[0]) sayProblem(kept.problems[0])
  }
  return (
    <div className="teach-ways">
      <button type="button" className="key key-main" disabled={!sound} onClick={() => void keep()}>
        {t('write:keep')}
      </button>
      <button
        type="button"
        className="key"
        disabled={!sound}
        onClick={() => {
          openLesson(lesson, null)
          go('teach', code)
        }}
      >
        {t('write:try')}
      </button>
      <button type="button" className="word" onClick={putAway}>
        {t('write:putAway')}
      </button>
    </div>
  )
}
