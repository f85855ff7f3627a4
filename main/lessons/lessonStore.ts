import type { OwnLesson } from '../contract/teaching.ts'
import { plainStore } from '../database/recordStore.ts'

/** How the workshop's own lessons lie in their table. */
export const ownLessonStore = plainStore<OwnLesson>('lesson', ({ title }) => title)
