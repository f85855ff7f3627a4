import { useThree } from '@react-three/fiber'
import { useEffect, useMemo } from 'react'
import { DirectionalLight, HemisphereLight } from 'three'
import { paintEnvironment } from './environment.ts'

/** Half the side of the square that the key's shadow map covers (mm). */
const SHADOW_HALF_MM = 190

const keyLight = (dark: boolean): DirectionalLight => {
  const key = new DirectionalLight(0xffffff, dark ? 1.6 : 1.9)
  key.position.set(260, 480, 330)
  key.target.position.set(0, 130, 40)
  key.castShadow = true
  key.shadow.mapSize.set(1024, 1024)
  key.shadow.radius = 5
  key.shadow.normalBias = 0.6
  const { camera } = key.shadow
  camera.left = -SHADOW_HALF_MM
  camera.right = SHADOW_HALF_MM
  camera.top = SHADOW_HALF_MM
  camera.bottom = -SHADOW_HALF_MM
  camera.near = 120
  camera.far = 1100
  return key
}

/** Light from all sides; more of it where no painted surroundings lend theirs. */
const skyLight = (dark: boolean, mirrored: boolean): HemisphereLight =>
  new HemisphereLight(0xffffff, 0x8a918d, (mirrored ? 0.7 : 2) * (dark ? 0.5 : 1))

interface LightsProps {
  readonly dark: boolean
  /** Whether the steel mirrors its surroundings, which then are painted. */
  readonly mirrored: boolean
}

/** One key from upper right with a soft shadow, a little sky, and the painted surroundings that the steel mirrors. */
export const Lights = ({ dark, mirrored }: LightsProps) => {
  const gl = useThree((state) => state.gl)
  const scene = useThree((state) => state.scene)
  const invalidate = useThree((state) => state.invalidate)
  const key = useMemo(() => keyLight(dark), [dark])
  const sky = useMemo(() => skyLight(dark, mirrored), [dark, mirrored])

  useEffect(() => {
    if (!mirrored) return
    const texture = paintEnvironment(gl, dark)
    scene.environment = texture
    invalidate()
    return () => {
      scene.environment = null
      texture.dispose()
    }
  }, [gl, scene, dark, mirrored, invalidate])
  useEffect(() => () => key.dispose(), [key])
  useEffect(() => () => sky.dispose(), [sky])
  return (
    <>
      <primitive object={key} />
      <primitive object={key.target} />
      <primitive object={sky} />
    </>
  )
}
