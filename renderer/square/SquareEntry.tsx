import type { Job } from '../../geometry/job.ts'
import { sayProblem, useApp } from '../app/store.ts'
import { addReading } from '../rack/edits.ts'
import { FigureField } from '../ui/FigureField.tsx'
import { useTexts } from '../ui/texts.tsx'
import { groundOf } from './ground.ts'
import { changeSquare, takeReading, useSquare } from './setting.ts'

interface SquareEntryProps {
  readonly job: Job
  readonly place: string
}

const NO_RELIEF = { reliefLeftMm: null, reliefRightMm: null, leafStepMm: null }

/** The square's gaps and length, how often the iron was clamped, and the keys that take the reading. */
export const SquareEntry = ({ job, place }: SquareEntryProps) => {
  const t = useTexts()
  const setting = useSquare(place)
  const tool = useApp((app) => app.tool)
  const jobId = useApp((app) => app.job?.id ?? null)
  const bevelDeg = useApp(
    (app) => app.report?.setUp.bevelAngleDeg ?? job.aim.bevelAngleDeg ?? tool?.bevelAngleDeg ?? 25,
  )
  const { gapMm, otherGapMm, overMm } = setting
  const take = (logId: string | null) => {
    if (gapMm !== null) takeReading(place, { gapMm, otherGapMm, overMm }, groundOf(job, bevelDeg), logId)
  }
  const keep = async () => {
    if (!tool || gapMm === null) return
    // The log keeps the edge alone: the mean of both sides, where a square of true sides would have shown it.
    const squareGapMm = otherGapMm === null ? gapMm : (gapMm + otherGapMm) / 2
    const line = { toolId: tool.id, jobId, stage: 'asGround' as const, ...NO_RELIEF, squareGapMm, squareOverMm: overMm }
    const kept = await addReading(line, tool.name)
    if (kept.ok) return take(kept.value.value.id)
    if (kept.problems[0]) sayProblem(kept.problems[0])
  }
  return (
    <section className="square-entry" aria-label={t('square:entry.heading')}>
      <h2>{t('square:entry.heading')}</h2>
      <FigureField
        quantity="measure.squareGapMm"
        size="large"
        value={setting.gapMm}
        allowEmpty
        onCommit={(gapMm) => changeSquare(place, { gapMm })}
      />
      <FigureField
        quantity="square.otherGapMm"
        size="large"
        value={setting.otherGapMm}
        allowEmpty
        onCommit={(otherGapMm) => changeSquare(place, { otherGapMm })}
      />
      <FigureField
        quantity="measure.squareOverMm"
        size="large"
        value={setting.overMm}
        onCommit={(overMm) => overMm !== null && changeSquare(place, { overMm })}
      />
      <FigureField
        quantity="square.clamping"
        size="large"
        value={setting.clamping}
        onCommit={(clamping) => clamping !== null && changeSquare(place, { clamping })}
      />
      <label className="square-dressed">
        <input
          type="checkbox"
          checked={setting.dressed}
          onChange={(event) => changeSquare(place, { dressed: event.target.checked })}
        />
        {t('square:entry.dressed')}
      </label>
      <div className="square-keys">
        <button type="button" className="key key-main" disabled={gapMm === null} onClick={() => take(null)}>
          {t('square:entry.take')}
        </button>
        <button type="button" className="word" disabled={gapMm === null} onClick={() => void keep()}>
          {t('square:entry.keep')}
        </button>
      </div>
      <p className="muted">{t('square:entry.how')}</p>
    </section>
  )
}
