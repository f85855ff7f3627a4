import { useThree } from '@react-three/fiber'
import { useEffect } from 'react'
import { type Finer, offerFiner } from './finer.ts'

interface ForFilesProps {
  /** Drawn by the processor alone, which smooths no edges: drawn larger and taken down, they come out smooth. */
  readonly software: boolean
  readonly turnWheel: (seconds: number) => void
}

const SOFTWARE_SHARE = 2

/** Lets the picture be drawn at any size for a file, without a trace on the screen. */
export const ForFiles = ({ software, turnWheel }: ForFilesProps) => {
  const gl = useThree((state) => state.gl)
  const advance = useThree((state) => state.advance)
  const get = useThree((state) => state.get)
  useEffect(() => {
    const most = gl.capabilities.maxTextureSize
    const draw = ({ pxPerCssPx, wheelSeconds }: Finer, use: (drawn: HTMLCanvasElement) => void): void => {
      const { width, height } = get().size
      const before = gl.getPixelRatio()
      const wanted = pxPerCssPx * (software ? SOFTWARE_SHARE : 1)
      const ratio = Math.min(wanted, most / Math.max(width, height, 1))
      if (wheelSeconds !== null) turnWheel(wheelSeconds)
      if (ratio !== before) gl.setPixelRatio(ratio)
      advance(performance.now())
      // What a canvas of this kind holds can be read until the window is drawn next, and no later.
      use(gl.domElement)
      if (ratio === before) return
      gl.setPixelRatio(before)
      advance(performance.now())
    }
    return offerFiner(gl.domElement, draw)
  }, [gl, advance, get, software, turnWheel])
  return null
}
