import { useEffect, useMemo } from 'react'
import { type Keeping, KeepingWith } from '../../grind/handles/keeping.ts'
import { Stage } from '../../grind/Stage.tsx'
import { type Running, useLiveGrind, useMoment } from '../../grind/useLiveGrind.ts'
import { usePalette } from '../../grind/useScreen.ts'
import { useTexts } from '../../ui/texts.tsx'
import { MachineViews } from '../MachineViews.tsx'
import type { Shown, ShownModel } from './channel.ts'

interface ClassModelProps {
  readonly model: ShownModel
  readonly pointer: Shown['pointer']
}

/** Nothing can be taken hold of in the class view. */
const onlyLook: Keeping = { keep: async () => false, may: () => false }

/** The machine of the teacher's window, ground anew here and always at the teacher's moment. */
export const ClassModel = (props: ClassModelProps) => {
  const t = useTexts()
  const { running } = useLiveGrind(props.model.job)
  if (!running) return <p className="class-waiting">{t('grind:empty.starting')}</p>
  return <Alive {...props} running={running} />
}

const Alive = ({ model, pointer, running }: ClassModelProps & { readonly running: Running }) => {
  const moment = useMoment(running)
  const palette = usePalette()
  const { live, shape } = running
  const sameJob = useMemo(() => JSON.stringify(model.job), [model.job]) === JSON.stringify(running.job)
  const step = Math.min(model.step, shape.sweeps * shape.stepsPerSweep)
  useEffect(() => {
    if (sameJob) live.seek(step)
  }, [live, sameJob, step])
  const { lifted, dot, rotation, cooling, views, wantedMm, leastDeepMm } = model
  const seen = { running, moment, lifted }
  return (
    <KeepingWith value={onlyLook}>
      <div className="class-stage">
        <Stage
          {...seen}
          palette={palette}
          dot={dot}
          rotation={rotation}
          cooling={cooling}
          typed={false}
          homeCount={0}
        />
        {pointer && (
          <span className="class-pointer" style={{ left: `${100 * pointer[0]}%`, top: `${100 * pointer[1]}%` }} />
        )}
      </div>
      <MachineViews {...seen} {...{ views, wantedMm, leastDeepMm, dot, palette }} />
    </KeepingWith>
  )
}
