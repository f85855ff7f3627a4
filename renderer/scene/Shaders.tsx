import { useThree } from '@react-three/fiber'
import { useEffect } from 'react'

/** Has the graphics make what the first picture is drawn with, without waiting for it, and tells when that is there. */
export const Shaders = ({ onReady }: { readonly onReady: () => void }) => {
  const get = useThree((state) => state.get)
  useEffect(() => {
    let gone = false
    const { gl, scene, camera } = get()
    const ready = (): void => {
      if (!gone) onReady()
    }
    // What cannot be made ahead is made with the picture.
    Promise.resolve()
      .then(() => gl.compileAsync(scene, camera))
      .then(ready, ready)
    return () => {
      gone = true
    }
  }, [get, onReady])
  return null
}
