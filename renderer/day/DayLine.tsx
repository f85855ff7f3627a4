import type { Result } from '../../geometry/result.ts'
import type { DaySetting, QueueLine } from '../../main/contract/day.ts'
import { barInWords, stopsInWords, whyInWords } from '../../main/contract/dayWords.ts'
import { go } from '../app/route.ts'
import { sayProblem } from '../app/store.ts'
import { dequeue, tickEntry } from '../app/storeDay.ts'
import { takeTool } from '../app/storeJob.ts'
import { FigureText } from '../ui/FigureText.tsx'
import { IronMark } from '../ui/IronMark.tsx'
import { Tick } from '../ui/Tick.tsx'
import { problemSentence, useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'

const sayWhyNot = async (doing: Promise<Result<unknown>>): Promise<void> => {
  const done = await doing
  if (!done.ok && done.problems[0]) sayProblem(done.problems[0])
}

/** An iron of the day: whether it is done, how it is set up, why it stands here, and what can be done with it. */
export const DayLine = ({ line }: { readonly line: QueueLine }) => {
  const t = useTexts()
  const { lengthUnit } = useFigures()
  const { tool, entry, setting, problem } = line
  const { code, name } = tool
  const open = () => {
    takeTool(tool)
    go('plan', code)
  }
  return (
    <li className="day-line" data-done={entry.doneAt !== null}>
      <Tick
        name={
          <span className="day-name">
            <IronMark dot={tool.dotCorner} /> <span className="day-code">{code}</span> {name}
            <span className="unseen"> {t('day:column.done')}</span>
          </span>
        }
        checked={entry.doneAt !== null}
        onTick={(done) => sayWhyNot(tickEntry(entry, done, name))}
      />
      {setting && <Setting setting={setting} />}
      <p className="muted day-why">
        {problem ? `${problemSentence(t, problem)} ${t('day:noSetUp')}` : whyInWords(t, line, lengthUnit)}
      </p>
      <p className="day-keys">
        <button type="button" className="word" aria-label={t('day:openOf', { code })} onClick={open}>
          {t('day:open')}
        </button>
        <button
          type="button"
          className="word"
          aria-label={t('day:takeOffOf', { code })}
          onClick={() => void sayWhyNot(dequeue(entry, name))}
        >
          {t('day:takeOff')}
        </button>
      </p>
    </li>
  )
}

const Setting = ({ setting }: { readonly setting: DaySetting }) => {
  const t = useTexts()
  const figures = useFigures()
  const bar = barInWords(t, setting, figures.lengthUnit)
  const stops = stopsInWords(t, setting, figures.lengthUnit)
  return (
    <div className="day-setting">
      <FigureText
        size="small"
        figure={{ text: bar.figure, unit: '' }}
        name={[t('day:column.bar'), bar.how].join(', ')}
      />
      <FigureText
        size="small"
        figure={figures.of('aim.projectionMm', setting.projectionMm)}
        name={t('day:column.projection')}
      />
      <FigureText
        size="small"
        figure={{ text: stops.main, unit: '' }}
        name={[t('day:column.stops'), stops.note].filter(Boolean).join(', ')}
      />
    </div>
  )
}
