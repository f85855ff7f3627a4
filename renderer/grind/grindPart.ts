import { drawingOf } from '../scene/NoPicture.tsx'
import { pause } from '../ui/pause.ts'
import { GrindScreen } from './GrindScreen.tsx'

/** Asks what draws in this window before the screen is there to wait for the answer. @returns the screen */
export const grindPart = async (): Promise<typeof GrindScreen> => {
  drawingOf()
  await pause()
  return GrindScreen
}
