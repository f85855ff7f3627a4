import { failed, ok, problem, type Result } from '../../geometry/result.ts'

/** Pixels across that are asked for: enough for a small label a hand's width away; more makes each picture slower to read. */
const WANTED_PX = 1280

/** What browsers call the reasons why there is no picture. */
const reasons: Readonly<Record<string, string>> = {
  NotAllowedError: 'cameraDenied',
  SecurityError: 'cameraDenied',
  NotFoundError: 'cameraMissing',
  OverconstrainedError: 'cameraMissing',
  NotReadableError: 'cameraBusy',
  AbortError: 'cameraBusy',
}

/** A running camera. */
export interface Camera {
  readonly stream: MediaStream
  /** Called once if it is unplugged. */
  onGone(gone: () => void): void
  stop(): void
}

/** Starts a camera, the one that looks away from the screen where there are two. @returns it, or why there is none */
export const startCamera = async (): Promise<Result<Camera>> => {
  // Not there in a page that is neither this machine's own nor encrypted.
  if (!navigator.mediaDevices) return failed(problem('cameraMissing'))
  try {
    const video = { facingMode: 'environment', width: { ideal: WANTED_PX } }
    const stream = await navigator.mediaDevices.getUserMedia({ video, audio: false })
    return ok({
      stream,
      onGone: (gone) => {
        for (const track of stream.getTracks()) track.addEventListener('ended', gone, { once: true })
      },
      stop: () => {
        for (const track of stream.getTracks()) track.stop()
      },
    })
  } catch (error) {
    return failed(problem(reasons[error instanceof Error ? error.name : ''] ?? 'cameraBusy'))
  }
}
