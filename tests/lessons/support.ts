import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { Change, Lesson } from '../../geometry/lesson/lesson.ts'
import { parseLessonText } from '../../geometry/lesson/parseLesson.ts'
import { found } from '../geometry/example.ts'

const folder = fileURLToPath(new URL('../../assets/lessons/', import.meta.url))

export const lessonFiles = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .sort()
export const lessonText = (file: string): string => readFileSync(`${folder}${file}`, 'utf8')
/** The program's own lessons in their order. */
export const lessons: readonly Lesson[] = lessonFiles.map((file) => found(parseLessonText(lessonText(file))))

const both = (turns: number): Change => ({ 'motion.stopTurnsLeft': turns, 'motion.stopTurnsRight': turns })

/** A way to what is to be reached, for each such step: `id/step` from 0. Found by trying; the engine says whether it gets there. */
export const ways: Readonly<Record<string, Change>> = {
  'why-a-curve/2': { 'aim.reliefMm': 0.072 },
  'the-seat/3': { 'aim.reliefMm': 1.7 },
  'lateral-lever/1': { 'bench.leverDeg': 0 },
  'measuring/3': { 'aim.reliefMm': 0.36 },
  'the-triangle/2': { 'aim.projectionMm': 122.6 },
  'ink/1': { 'aim.projectionMm': 131.3 },
  'square-and-dressing/2': { 'errors.wheelConeMm': 0.06 },
  'free-play/3': both(1.25),
  'fingers/4': { 'motion.traverseMm': 18 },
  'freshen/2': both(1.75),
  'roof-and-arc/2': { 'second.sweeps': 20 },
  'honing/2': { 'bench.strokesCorner': 5, 'bench.strokesHalfway': 3, 'bench.strokesMiddle': 2 },
  'honing/4': { 'bench.capSetbackMm': 0.18 },
  'fault-hunt/3': { 'aim.reliefMm': 0.48 },
  'fault-hunt/4': both(2.25),
}
