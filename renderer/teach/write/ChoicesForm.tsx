import { figureNames } from '../../../geometry/lesson/figureNames.ts'
import type { Ask, Condition } from '../../../geometry/lesson/lesson.ts'
import { TextEntry } from '../../ui/Entry.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { asTyped, figureOrName } from './AskForm.tsx'

type Choices = Extract<Ask, { kind: 'choose' }>['choices']

interface ChoicesFormProps {
  readonly choices: Choices
  readonly onChange: (choices: Choices) => void
}

const comparisons = ['more', 'less', 'same'] as const

/** Choices, each with what makes it the right one: the engine decides, not the writer. */
export const ChoicesForm = ({ choices, onChange }: ChoicesFormProps) => {
  const t = useTexts()
  const patch = (k: number, part: Partial<Choices[number]>) =>
    onChange(choices.map((each, i) => (i === k ? { ...each, ...part } : each)))
  const last = choices.at(-1)
  return (
    <ol className="write-choices">
      {choices.map((choice, k) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a choice is known by its place alone
        <li key={k}>
          <TextEntry
            name={t('write:choice.text', { number: k + 1 })}
            value={choice.text}
            onChange={(text) => patch(k, { text })}
          />
          {choice.when.map((condition, i) => (
            <When
              // biome-ignore lint/suspicious/noArrayIndexKey: a condition is known by its place alone
              key={i}
              condition={condition}
              onChange={(next) => patch(k, { when: choice.when.with(i, next) })}
            />
          ))}
          {choices.length > 2 && (
            <button type="button" className="word" onClick={() => onChange(choices.toSpliced(k, 1))}>
              {t('write:choice.remove', { number: k + 1 })}
            </button>
          )}
        </li>
      ))}
      {last && (
        <button type="button" className="word" onClick={() => onChange([...choices, { ...last, text: '' }])}>
          {t('write:choice.add')}
        </button>
      )}
    </ol>
  )
}

interface WhenProps {
  readonly condition: Condition
  readonly onChange: (condition: Condition) => void
}

const When = ({ condition, onChange }: WhenProps) => {
  const t = useTexts()
  const patch = (part: object) => onChange({ ...condition, ...part } as Condition)
  return (
    <div className="teach-row-form">
      <TextEntry
        name={t('write:choice.figure')}
        value={condition.figure}
        onChange={(figure) => patch({ figure: figure.trim() })}
        offered={figureNames}
      />
      <label className="entry">
        <span className="entry-name">{t('write:choice.is')}</span>
        <select value={condition.is} onChange={(event) => patch({ is: event.target.value })}>
          {comparisons.map((each) => (
            <option key={each} value={each}>
              {t(`write:choice.${each}`)}
            </option>
          ))}
        </select>
      </label>
      <TextEntry
        name={t('write:choice.than')}
        value={asTyped(condition.than)}
        onChange={(typed) => patch({ than: figureOrName(typed) })}
      />
      <TextEntry
        name={t('write:choice.by')}
        value={asTyped(condition.by)}
        onChange={(typed) => patch({ by: figureOrName(typed) })}
      />
    </div>
  )
}
