import {
  BufferTarget,
  CanvasSource,
  getFirstEncodableVideoCodec,
  Mp4OutputFormat,
  Output,
  QUALITY_HIGH,
  type VideoCodec,
  WebMOutputFormat,
} from 'mediabunny'
import { failed, ok, problem, type Result } from '../../../geometry/result.ts'
import type { LiveGrind } from '../../worker/liveGrind.ts'
import type { ClipFrame } from './clipPlan.ts'
import { goTo } from './moments.ts'
import { canvasFor, drawPicture } from './picture.ts'

/** Kinds of file a clip can be, each with the ways of packing pictures that its players know, the better first. */
const forms = {
  webm: { codecs: ['vp9', 'vp8'], mediaType: 'video/webm' },
  mp4: { codecs: ['avc'], mediaType: 'video/mp4' },
} as const satisfies Record<string, { readonly codecs: readonly VideoCodec[]; readonly mediaType: string }>
export type ClipForm = keyof typeof forms

/** A whole picture this often (s), so that a player can be drawn back and forth in it. */
const WHOLE_PICTURE_EVERY_S = 1

/** A clip to be made. */
export interface ClipTask {
  readonly live: LiveGrind
  readonly run: number
  readonly frames: readonly ClipFrame[]
  readonly framesPerSecond: number
  readonly form: ClipForm
  /** The view that is drawn. */
  readonly element: HTMLElement
  readonly widthPx: number
  readonly signal: AbortSignal
  /** Told how far it is, 0 to 1. */
  onProgress(share: number): void
}

/** A finished clip. */
export interface Clip {
  readonly bytes: ArrayBuffer
  readonly mediaType: string
}

const startOutput = async (task: ClipTask, canvas: HTMLCanvasElement, codec: VideoCodec) => {
  const target = new BufferTarget()
  const format = task.form === 'webm' ? new WebMOutputFormat() : new Mp4OutputFormat({ fastStart: 'in-memory' })
  const output = new Output({ format, target })
  const source = new CanvasSource(canvas, {
    codec,
    bitrate: QUALITY_HIGH,
    keyFrameInterval: WHOLE_PICTURE_EVERY_S,
  })
  output.addVideoTrack(source, { frameRate: task.framesPerSecond })
  await output.start()
  return { output, source, target }
}

/** Draws every picture at its own moment and hands it on. */
const drawAll = async (task: ClipTask, canvas: HTMLCanvasElement, source: CanvasSource): Promise<Result<null>> => {
  const { frames, framesPerSecond, live, run, signal } = task
  for (const [done, { step, sweep, atSeconds }] of frames.entries()) {
    const there = await goTo(live, run, step, signal)
    if (!there.ok) return there
    // A sweep takes a second at the wheel, so its count is the time that the wheel has turned.
    const drawn = await drawPicture(canvas, task.element, sweep)
    if (!drawn.ok) return drawn
    await source.add(atSeconds, 1 / framesPerSecond)
    task.onProgress((done + 1) / frames.length)
  }
  return signal.aborted ? failed(problem('cancelled')) : ok(null)
}

/**
 * Makes a clip, picture by picture: the grind is brought to each moment, drawn, and packed. It is made in memory, so nothing
 * half written is ever left; broken off, there is nothing at all. The grind stands at the last moment shown.
 */
export const makeClip = async (task: ClipTask): Promise<Result<Clip>> => {
  const { form } = task
  const canvas = canvasFor(task.element, task.widthPx, true)
  const { width, height } = canvas
  const codec = await getFirstEncodableVideoCodec([...forms[form].codecs], { width, height, bitrate: QUALITY_HIGH })
  if (!codec) return failed(problem('clipNoForm', '', { form: form.toUpperCase() }))
  try {
    const { output, source, target } = await startOutput(task, canvas, codec)
    const drawn = await drawAll(task, canvas, source)
    if (!drawn.ok) {
      await output.cancel()
      return drawn
    }
    await output.finalize()
    return target.buffer
      ? ok({ bytes: target.buffer, mediaType: forms[form].mediaType })
      : failed(problem('clipFailed'))
  } catch {
    return failed(problem('clipFailed'))
  }
}
