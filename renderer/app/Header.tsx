import { languages } from '../../main/contract/language.ts'
import { HelpWord } from '../help/HelpWord.tsx'
import { IronMark } from '../ui/IronMark.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { makeCard, printCard } from './card.ts'
import { KeysWord } from './KeysSheet.tsx'
import { hashFor, type Screen, screens } from './route.ts'
import { sayNothing, useApp } from './store.ts'
import { saveSettings, undo } from './storeRack.ts'
import './header.css'

/** Where the work is, what is in hand, and what can be done from everywhere. */
export const Header = ({ screen }: { readonly screen: Screen }) => (
  <header className="header">
    <Screens screen={screen} />
    <ToolChip />
    <Everywhere />
  </header>
)

const Screens = ({ screen }: { readonly screen: Screen }) => {
  const t = useTexts()
  const code = useApp((app) => app.tool?.code ?? null)
  return (
    <nav aria-label={t('common:nav')} className="nav">
      {(Object.keys(screens) as Screen[]).map((each) => (
        <a
          key={each}
          href={hashFor(each, code)}
          aria-current={each === screen ? 'page' : undefined}
          onClick={sayNothing}
        >
          {t(`common:screen.${each}`)}
        </a>
      ))}
    </nav>
  )
}

const ToolChip = () => {
  const t = useTexts()
  const figures = useFigures()
  const tool = useApp((app) => app.tool)
  const task = useApp((app) => app.job?.document.aim.task ?? null)
  if (!tool) return <p className="chip muted">{t('common:chip.none')}</p>
  const size = t('common:chip.size', {
    width: figures.of('blade.widthMm', tool.widthMm).text,
    thickness: figures.inWords(tool.thicknessMm, 'mm', 1),
  })
  const seat =
    tool.seatAngleDeg === null ? '' : t('common:chip.seat', { seat: figures.inWords(tool.seatAngleDeg, 'deg', 0) })
  return (
    <section className="chip" aria-label={t('common:chip.label')}>
      <IronMark dot={tool.dotCorner} />
      <span className="chip-code">{tool.code}</span>
      <span className="chip-name">{tool.name}</span>
      <span className="chip-size muted">
        {size}, {t(`common:bevelSide.${tool.bevelSide}`)}
        {seat}
      </span>
      {task && <span className="block chip-task">{t(`common:task.${task}`)}</span>}
    </section>
  )
}

const Everywhere = () => {
  const t = useTexts()
  return (
    <div className="everywhere">
      <button type="button" className="word" onClick={() => void undo()} title={t('common:undoHint')}>
        {t('common:undo')}
      </button>
      <button type="button" className="word" onClick={() => void makeCard()}>
        {t('common:jobCard')}
      </button>
      <button type="button" className="word" onClick={() => void printCard()} title={t('common:printHint')}>
        {t('common:print')}
      </button>
      <KeysWord />
      <HelpWord />
      <Choice name="language" options={languages} />
      <Choice name="lengthUnit" options={['mm', 'inch', 'thou']} />
      <Choice name="theme" options={['light', 'dark', 'system']} />
    </div>
  )
}

interface ChoiceProps {
  readonly name: 'language' | 'lengthUnit' | 'theme'
  readonly options: readonly string[]
}

const Choice = ({ name, options }: ChoiceProps) => {
  const t = useTexts()
  const value = useApp((app) => app.settings[name])
  return (
    <select
      className="word"
      aria-label={t(`common:settings.${name}.label`)}
      value={value}
      onChange={(event) => void saveSettings({ [name]: event.target.value })}
    >
      {options.map((option) => (
        <option key={option} value={option}>
          {t(`common:settings.${name}.${option}`)}
        </option>
      ))}
    </select>
  )
}
