import { figureNames } from '../../../geometry/lesson/figureNames.ts'
import type { Ask } from '../../../geometry/lesson/lesson.ts'
import { plainly } from '../../../main/contract/figures.ts'
import { NoteEntry, TextEntry } from '../../ui/Entry.tsx'
import { Options } from '../../ui/Options.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { ChoicesForm } from './ChoicesForm.tsx'
import { asKind } from './draft.ts'

interface AskFormProps {
  readonly ask: Ask | null
  readonly onChange: (ask: Ask | null) => void
}

const kinds = ['none', 'choose', 'predict', 'draw', 'reach'] as const

/** A figure or a name, as it was typed. */
export const figureOrName = (typed: string): number | string => {
  const text = typed.trim().replace(',', '.')
  return text !== '' && Number.isFinite(Number(text)) ? Number(text) : typed
}

/** @returns a figure with the language's decimal mark, a name as it is: what `figureOrName` reads */
export const asTyped = (value: number | string): string => (typeof value === 'number' ? plainly(value) : value)

/** What a step asks, and what it is held against. */
export const AskForm = ({ ask, onChange }: AskFormProps) => {
  const t = useTexts()
  return (
    <fieldset className="write-ask">
      <Options
        legend={t('write:ask.legend')}
        options={kinds.map((kind) => ({ value: kind, name: t(`write:ask.${kind}`) }))}
        value={ask?.kind ?? 'none'}
        onChoose={(kind) => onChange(kind === 'none' ? null : asKind(ask, kind))}
      />
      {ask && <Asked ask={ask} onChange={onChange} />}
    </fieldset>
  )
}

const Asked = ({ ask, onChange }: { readonly ask: Ask; readonly onChange: (ask: Ask) => void }) => {
  const t = useTexts()
  const patch = (part: object) => onChange({ ...ask, ...part } as Ask)
  return (
    <>
      <TextEntry name={t('write:ask.question')} value={ask.question} onChange={(question) => patch({ question })} />
      {ask.kind === 'choose' && <ChoicesForm choices={ask.choices} onChange={(choices) => patch({ choices })} />}
      {(ask.kind === 'predict' || ask.kind === 'reach') && (
        <TextEntry
          name={t('write:ask.figure')}
          value={ask.figure}
          onChange={(figure) => patch({ figure: figure.trim() })}
          offered={figureNames}
        />
      )}
      {ask.kind === 'reach' && (
        <TextEntry
          name={t('write:ask.target')}
          value={asTyped(ask.target)}
          onChange={(typed) => patch({ target: figureOrName(typed) })}
          offered={figureNames}
        />
      )}
      {ask.kind !== 'choose' && (
        <TextEntry
          name={t('write:ask.within')}
          value={asTyped(ask.within)}
          onChange={(typed) => patch({ within: figureOrName(typed) })}
        />
      )}
      <NoteEntry
        name={t('write:ask.hints')}
        value={ask.hints.join('\n')}
        onChange={(text) => patch({ hints: text.split('\n').filter((line, k) => line !== '' || k === 0) })}
      />
      <NoteEntry name={t('write:ask.right')} value={ask.right} onChange={(right) => patch({ right })} />
      <NoteEntry name={t('write:ask.wrong')} value={ask.wrong} onChange={(wrong) => patch({ wrong })} />
    </>
  )
}
