import { pause } from '../ui/pause.ts'
import { sheenData } from './rimTextures.ts'
import { rimGrain, sideGrain, steelStrokes } from './textures.ts'

/** Makes what the surfaces are painted with, one after another with a pause between: together they would hold the window up. */
export const makeTiles = async (): Promise<void> => {
  for (const make of [steelStrokes, rimGrain, sideGrain, sheenData]) {
    make()
    await pause()
  }
}
