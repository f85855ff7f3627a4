import { useTexts } from '../ui/texts.tsx'
import { LessonList } from './LessonList.tsx'
import { LessonRun } from './LessonRun.tsx'
import { useTeaching } from './teaching.ts'
import { useLearnerId, useLessons } from './useLessons.ts'
import './teach.css'

/** Teach: the lessons in the order to learn them, or the one that is open. */
export const LessonsPart = () => {
  const t = useTexts()
  const known = useLessons()
  const lesson = useTeaching((teaching) => teaching.lesson)
  if (!known) return <p className="page-note">{t('common:opening')}</p>
  return lesson ? <LessonRun lesson={lesson} {...known} /> : <Listed {...known} />
}

const Listed = (known: NonNullable<ReturnType<typeof useLessons>>) => {
  const learnerId = useLearnerId(known.learning)
  return <LessonList {...known} learnerId={learnerId} />
}
