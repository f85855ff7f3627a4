import type { Lesson } from '../../geometry/lesson/lesson.ts'
import type { Answer } from '../../geometry/lesson/mark.ts'

/** @returns the seed of the figures that a question is asked with again: other ones after a guess, where the lesson has them, as what was told would answer it */
export const seedAgain = ({ varied }: Pick<Lesson, 'varied'>, answer: Answer | null, seed: number): number =>
  answer?.kind === 'predict' && varied.length > 0 ? seed + 1 : seed
