import {
  MeshBasicMaterial,
  MeshLambertMaterial,
  MeshPhysicalMaterial,
  MeshStandardMaterial,
  type MeshStandardMaterialParameters,
} from 'three'
import { brushedSteel, wheelGrain } from './textures.ts'

/** Colours that carry meaning come from the window's tokens, as CSS colours. */
export interface SceneColours {
  readonly touch: string
  readonly ink: string
}

/** Share of a lamp's own glint that steel keeps: its brightness is what it mirrors, not the lamp. */
const STEEL_GLINT = 0.1

const steelMaterial = (parameters: MeshStandardMaterialParameters): MeshStandardMaterial => {
  const material = new MeshStandardMaterial({ metalness: 1, ...parameters })
  material.onBeforeCompile = (shader) => {
    shader.fragmentShader = shader.fragmentShader.replace(
      'reflectedLight.directSpecular +',
      `${STEEL_GLINT.toFixed(2)} * reflectedLight.directSpecular +`,
    )
  }
  return material
}

/** Every material of the scene, made once a scene and disposed of with it. */
export const createMaterials = ({ touch }: SceneColours) => {
  const steel = brushedSteel()
  const rimGrain = wheelGrain(11, 0.34)
  const sideGrain = wheelGrain(23, 0.4)
  rimGrain.repeat.set(12, 1)
  sideGrain.repeat.set(4, 4)
  return {
    back: steelMaterial({
      color: 0xb0b2b0,
      roughness: 0.42,
      map: steel.colour,
      roughnessMap: steel.roughness,
    }),
    /** The part of the blade that is ground: its outline moves, so its faces shade themselves. */
    tip: steelMaterial({
      color: 0xb0b2b0,
      roughness: 0.42,
      map: steel.colour,
      roughnessMap: steel.roughness,
      flatShading: true,
    }),
    bevel: steelMaterial({ metalness: 0.75, roughness: 0.4, vertexColors: true }),
    bar: steelMaterial({ color: 0xb9bcba, roughness: 0.24 }),
    screw: steelMaterial({ color: 0x9a9e9c, roughness: 0.34 }),
    moving: new MeshLambertMaterial({ color: 0x3a4245 }),
    fixed: new MeshLambertMaterial({ color: 0xaab1ad }),
    rim: new MeshPhysicalMaterial({
      color: 0x969696,
      roughness: 0.78,
      metalness: 0,
      map: rimGrain,
      clearcoat: 0.7,
      clearcoatRoughness: 0.3,
    }),
    side: new MeshLambertMaterial({ color: 0x8f8f8d, map: sideGrain }),
    bore: new MeshLambertMaterial({ color: 0x4a4f50 }),
    arrow: new MeshBasicMaterial({ color: 0xffffff }),
    dot: new MeshBasicMaterial({ color: 0x16191a }),
    touch: new MeshBasicMaterial({ color: touch, toneMapped: false, transparent: true, opacity: 0.92 }),
  }
}

export type SceneMaterials = ReturnType<typeof createMaterials>
