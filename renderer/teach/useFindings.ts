import { useEffect, useState } from 'react'
import type { Findings } from '../../geometry/lesson/findings.ts'
import type { Change, Lesson } from '../../geometry/lesson/lesson.ts'
import type { Result } from '../../geometry/result.ts'
import { lessonEngine } from './engine.ts'

interface Found {
  readonly key: string
  readonly result: Result<Findings>
}

/** What the engine finds for a step, worked out aside. @returns null while it is at work */
export const useFindings = (lesson: Lesson, step: number, moved: Change, seed = 0): Result<Findings> | null => {
  const [found, setFound] = useState<Found | null>(null)
  const key = JSON.stringify([lesson.id, step, moved, seed])
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key says what is looked at
  useEffect(() => {
    let wanted = true
    void lessonEngine.ask({ lesson, step, moved, seed }).then((result) => {
      if (wanted && result) setFound({ key, result })
    })
    return () => {
      wanted = false
    }
  }, [lesson, key])
  return found?.key === key ? found.result : null
}
