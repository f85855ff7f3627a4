import { LessonModel } from './LessonModel.tsx'
import type { StepProps } from './LessonRun.tsx'
import { EdgePicture } from './pictures/EdgePicture.tsx'
import { WoodPicture } from './pictures/WoodPicture.tsx'

/** What answers at the right: the model with its views, or what is drawn of the edge alone. */
export const LessonShown = (props: StepProps) => {
  const { views } = props.step
  const onModel = views.some((view) => view !== 'wood' && view !== 'glass')
  return (
    <div className="teach-shown">
      {onModel && <LessonModel {...props} />}
      {!onModel && views.includes('glass') && <EdgePicture state={props.state} />}
      {views.includes('wood') && <WoodPicture state={props.state} />}
    </div>
  )
}
