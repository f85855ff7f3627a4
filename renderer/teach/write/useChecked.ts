import { useEffect, useState } from 'react'
import type { Lesson } from '../../../geometry/lesson/lesson.ts'
import type { Problem } from '../../../geometry/result.ts'
import { call } from '../../app/transport.ts'

/** The door is asked once the fingers rest (ms). */
const REST_MS = 400

/** What is wrong with a lesson as it is written. @returns null until it is looked at; none: it is sound */
export const useChecked = (lesson: Lesson): readonly Problem[] | null => {
  const [found, setFound] = useState<{ readonly lesson: Lesson; readonly problems: readonly Problem[] } | null>(null)
  useEffect(() => {
    const timer = setTimeout(async () => {
      const checked = await call('lesson.check', { text: JSON.stringify(lesson) })
      setFound({ lesson, problems: checked.ok ? checked.value.problems : checked.problems })
    }, REST_MS)
    return () => clearTimeout(timer)
  }, [lesson])
  return found?.lesson === lesson ? found.problems : null
}
