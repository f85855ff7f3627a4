import { refsOfStep } from '../../geometry/lesson/findings.ts'
import { type LessonStep, showsModel } from '../../geometry/lesson/lesson.ts'
import { refOf } from '../../geometry/lesson/refs.ts'
import { useTexts } from '../ui/texts.tsx'
import { LessonModel } from './LessonModel.tsx'
import type { StepProps } from './LessonRun.tsx'
import { EdgePicture } from './pictures/EdgePicture.tsx'
import { SeatPicture } from './pictures/SeatPicture.tsx'
import { WoodPictures } from './pictures/WoodPictures.tsx'
import { keepsBack } from './teaching.ts'

/** What answers at the right: the model with its views, or what is drawn of the edge alone. */
export const LessonShown = (props: StepProps) => {
  const t = useTexts()
  const { step, teaching, state } = props
  if (showsModel(step))
    return (
      <div className="teach-shown">
        <LessonModel {...props} />
      </div>
    )
  const keptBack = keepsBack(step, teaching.stage)
  return (
    <div className="teach-shown">
      {keptBack && <p className="teach-waits">{t('teach:keptBack')}</p>}
      {!keptBack && step.views.includes('glass') && <EdgePicture {...props} />}
      {!keptBack && step.views.includes('wood') && <WoodPictures {...props} />}
      {step.views.includes('wood') && speaksOfSeat(step) && <SeatPicture state={state} />}
    </div>
  )
}

/** How the iron lies is drawn where a step speaks of what the wood sees of it, or only tells. */
const speaksOfSeat = (step: LessonStep): boolean =>
  step.ask === null || refsOfStep(step).some((ref) => refOf(ref)?.figure === 'woodReliefMm')
