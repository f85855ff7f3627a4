import { refsOfAsk } from '../../../geometry/lesson/findings.ts'
import type { Change, Lesson } from '../../../geometry/lesson/lesson.ts'
import { refOf } from '../../../geometry/lesson/refs.ts'
import { quantityOfPlace, stateOfCase } from '../../../geometry/lesson/state.ts'
import { quantityAt } from '../../../geometry/quantities.ts'
import { useFigures } from '../../ui/useFigure.ts'
import type { StepProps } from '../LessonRun.tsx'
import { usePlaceNames } from '../usePlaceNames.ts'
import { WoodPicture } from './WoodPicture.tsx'

/** The edge in the wood as it stands; once a question about other cases is answered, those cases, each with what is other in it. */
export const WoodPictures = ({ lesson, step, state, teaching }: StepProps) => {
  const nameOfCase = useCaseNames(lesson)
  const asks = step.ask !== null && step.ask.kind !== 'reach' && teaching.stage !== 'asking'
  const cases = asks ? casesOf(refsOfAsk(step)).filter((name) => name in lesson.cases) : []
  if (cases.length === 0) return <WoodPicture state={state} name={null} beside={false} />
  return cases.map((name) => {
    const other = stateOfCase(lesson, name, teaching.seed)
    return other.ok && <WoodPicture key={name} state={other.value} name={nameOfCase(name)} beside={cases.length > 1} />
  })
}

const casesOf = (refs: readonly string[]): readonly string[] => [
  ...new Set(refs.map((ref) => refOf(ref)?.of ?? null).filter((of) => of !== null)),
]

/** @returns what a case changes, in words and figures; null where it is the beginning itself */
const useCaseNames = ({ cases }: Lesson): ((name: string) => string | null) => {
  const placeName = usePlaceNames()
  const { inWords } = useFigures()
  const written = (change: Change): readonly string[] =>
    Object.entries(change).flatMap(([place, value]) => {
      const quantity = quantityOfPlace(place)
      if (quantity === null || typeof value !== 'number') return []
      const { unit, decimals } = quantityAt(quantity)
      return [`${placeName(place)} ${inWords(value, unit, decimals)}`]
    })
  return (name) => written(cases[name] ?? {}).join(', ') || null
}
