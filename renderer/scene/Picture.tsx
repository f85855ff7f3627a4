import { addAfterEffect, useThree } from '@react-three/fiber'
import { useEffect } from 'react'

interface PictureProps {
  readonly onLost: (lost: boolean) => void
}

/**
 * Watches over the picture: tells when the graphics are lost or given back, and writes on the canvas how many calls the last
 * picture took.
 */
export const Picture = ({ onLost }: PictureProps) => {
  const gl = useThree((state) => state.gl)
  useEffect(() => {
    const canvas = gl.domElement
    const lost = (event: Event): void => {
      // Only then are they given back.
      event.preventDefault()
      onLost(true)
    }
    const back = (): void => onLost(false)
    canvas.addEventListener('webglcontextlost', lost)
    canvas.addEventListener('webglcontextrestored', back)
    return () => {
      canvas.removeEventListener('webglcontextlost', lost)
      canvas.removeEventListener('webglcontextrestored', back)
    }
  }, [gl, onLost])
  useEffect(() => {
    let told = -1
    return addAfterEffect(() => {
      const { calls } = gl.info.render
      if (calls === told) return
      told = calls
      gl.domElement.dataset.drawCalls = String(calls)
    })
  }, [gl])
  return null
}
