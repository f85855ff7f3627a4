import type { Learning, LessonLine, Progress } from '../../main/contract/teaching.ts'
import { useApp } from '../app/store.ts'
import { useAnswer } from '../app/useAnswer.ts'
import { useTeaching } from './teaching.ts'

/** All lessons, and all that is known of who learnt them; null until they are there. */
export const useLessons = (): { readonly lines: readonly LessonLine[]; readonly learning: Learning } | null => {
  const lessonChanges = useApp((app) => app.lessonChanges)
  const learnerChanges = useApp((app) => app.learnerChanges)
  // Every answer of a learner changes the latter: the lessons themselves are not read again for it.
  const lines = useAnswer('lesson.list', {}, [lessonChanges])
  const learning = useAnswer('progress.list', {}, [lessonChanges, learnerChanges])
  return lines && learning ? { lines, learning } : null
}

/** Who learns: whoever was chosen, else whoever learnt last. @param learning its newest line first */
export const useLearnerId = (learning: Learning): string | null => {
  const { learnerId, learnerChosen } = useTeaching()
  return learnerChosen ? learnerId : (learning.progress[0]?.personId ?? null)
}

/** @returns how far somebody is in a lesson; null where it was never opened */
export const progressOf = ({ progress }: Learning, personId: string | null, lessonId: string): Progress | null =>
  progress.find((line) => line.personId === personId && line.lessonId === lessonId) ?? null
