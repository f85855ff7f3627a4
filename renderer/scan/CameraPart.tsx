import { useEffect, useRef, useState } from 'react'
import type { Problem } from '../../geometry/result.ts'
import { problem } from '../../geometry/result.ts'
import { Problems } from '../ui/Problems.tsx'
import { useTexts } from '../ui/texts.tsx'
import { type Camera, startCamera } from './camera.ts'
import { readCamera } from './readPicture.ts'

/** Pause between two pictures that are read (ms): seven a second find a label at once and leave the window free. */
const READ_PAUSE_MS = 140

/** Somebody has said yes to the camera since the window was opened, so the next sheet starts it unasked. */
let allowed = false

interface CameraPartProps {
  /** Told whatever any code before the camera says, each time it is read. */
  readonly onRead: (text: string) => void
}

/** The camera's picture, started by a key the first time, and what became of it. */
export const CameraPart = ({ onRead }: CameraPartProps) => {
  const t = useTexts()
  const camera = useCamera()
  const { state } = camera
  return (
    <section className="scan-camera" aria-label={t('scan:camera.label')}>
      {state.kind === 'on' && <CameraPicture camera={state.camera} onRead={onRead} />}
      <div className="scan-camera-keys">
        {state.kind === 'on' ? (
          <button type="button" className="key" onClick={camera.stop}>
            {t('scan:camera.stop')}
          </button>
        ) : (
          <button type="button" className="key" disabled={state.kind === 'asking'} onClick={() => void camera.start()}>
            {t('scan:camera.start')}
          </button>
        )}
        <p className="muted">
          {t(`scan:camera.${{ on: 'on', asking: 'asking', off: 'note', none: 'note' }[state.kind]}`)}
        </p>
      </div>
      {state.kind === 'none' && <Problems problems={[state.why]} />}
    </section>
  )
}

type CameraState =
  | { readonly kind: 'off' | 'asking' }
  | { readonly kind: 'on'; readonly camera: Camera }
  | { readonly kind: 'none'; readonly why: Problem }

const useCamera = () => {
  const [state, setState] = useState<CameraState>({ kind: 'off' })
  const running = useRef<Camera | null>(null)
  const there = useRef(true)
  const stop = () => {
    running.current?.stop()
    running.current = null
    if (there.current) setState({ kind: 'off' })
  }
  const start = async () => {
    setState({ kind: 'asking' })
    const started = await startCamera()
    // Closed while it was being asked for.
    if (!there.current) return started.ok && started.value.stop()
    if (!started.ok) return setState({ kind: 'none', why: started.problems[0] as Problem })
    allowed = true
    running.current = started.value
    started.value.onGone(() => setState({ kind: 'none', why: problem('cameraGone') }))
    setState({ kind: 'on', camera: started.value })
  }
  // biome-ignore lint/correctness/useExhaustiveDependencies: started and stopped with the sheet alone
  useEffect(() => {
    there.current = true
    if (allowed) void start()
    return () => {
      there.current = false
      stop()
    }
  }, [])
  return { state, start, stop }
}

const CameraPicture = ({ camera, onRead }: { readonly camera: Camera } & CameraPartProps) => {
  const t = useTexts()
  const video = useRef<HTMLVideoElement>(null)
  const latest = useRef(onRead)
  latest.current = onRead
  useEffect(() => {
    const picture = video.current
    if (!picture) return
    picture.srcObject = camera.stream
    picture.play().catch(() => undefined)
    return readAgain(picture, (text) => latest.current(text))
  }, [camera])
  return (
    <div className="scan-picture">
      <video ref={video} muted playsInline aria-label={t('scan:camera.label')} />
      <div className="scan-square" />
    </div>
  )
}

/** Reads picture after picture. @returns a function that ends it */
const readAgain = (video: HTMLVideoElement, onRead: (text: string) => void): (() => void) => {
  let timer = 0
  let over = false
  const readOne = async (): Promise<void> => {
    const { videoWidth: widthPx, videoHeight: heightPx } = video
    const text = widthPx > 0 ? await readCamera({ source: video, widthPx, heightPx }).catch(() => null) : null
    if (over) return
    if (text !== null) onRead(text)
    timer = window.setTimeout(() => void readOne(), READ_PAUSE_MS)
  }
  void readOne()
  return () => {
    over = true
    clearTimeout(timer)
  }
}
