import {
  MeshBasicMaterial,
  MeshLambertMaterial,
  MeshMatcapMaterial,
  MeshPhysicalMaterial,
  MeshStandardMaterial,
  type MeshStandardMaterialParameters,
} from 'three'
import { paintMatcap } from './matcap.ts'
import { brushedSteel, wheelGrain } from './textures.ts'

/** What the materials depend on. Colours that carry meaning come from the window's tokens, as CSS colours. */
export interface Looks {
  readonly touch: string
  readonly dark: boolean
  /** Drawn by the processor alone: steel is painted, not mirrored. */
  readonly software: boolean
}

/** Share of a lamp's own glint that steel keeps: its brightness is what it mirrors, not the lamp. */
const STEEL_GLINT = 0.1

const mirroringSteel = (parameters: MeshStandardMaterialParameters): MeshStandardMaterial => {
  const material = new MeshStandardMaterial({ metalness: 1, ...parameters })
  material.onBeforeCompile = (shader) => {
    shader.fragmentShader = shader.fragmentShader.replace(
      'reflectedLight.directSpecular +',
      `${STEEL_GLINT.toFixed(2)} * reflectedLight.directSpecular +`,
    )
  }
  return material
}

/** The plain rest of the blade lies under the ground end where both overlap: it is drawn a hair further off. */
const underneath = { polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 } as const

/** Steel of every kind: as it comes, bar, screw, freshly ground. */
const mirroringSteels = () => {
  const { colour: map, roughness: roughnessMap } = brushedSteel()
  const brushed = { color: 0xb0b2b0, roughness: 0.42, map, roughnessMap }
  return {
    back: mirroringSteel({ ...brushed, ...underneath }),
    tip: mirroringSteel({ ...brushed, flatShading: true }),
    bevel: mirroringSteel({ metalness: 0.75, roughness: 0.4, vertexColors: true }),
    bar: mirroringSteel({ color: 0xb9bcba, roughness: 0.24 }),
    screw: mirroringSteel({ color: 0x9a9e9c, roughness: 0.34 }),
  }
}

const paintedSteels = (dark: boolean) => {
  const matcap = paintMatcap(dark)
  const { colour: map } = brushedSteel()
  const brushed = { color: 0xd2d4d2, matcap, map }
  return {
    back: new MeshMatcapMaterial({ ...brushed, ...underneath }),
    tip: new MeshMatcapMaterial({ ...brushed, flatShading: true }),
    bevel: new MeshMatcapMaterial({ matcap, vertexColors: true }),
    bar: new MeshMatcapMaterial({ color: 0xaeb2b0, matcap }),
    screw: new MeshMatcapMaterial({ color: 0xb4b8b6, matcap }),
  }
}

const rimMaterial = (software: boolean): MeshLambertMaterial | MeshPhysicalMaterial => {
  const map = wheelGrain(11, 0.34)
  map.repeat.set(12, 1)
  return software
    ? new MeshLambertMaterial({ color: 0xa4a4a2, map })
    : new MeshPhysicalMaterial({ color: 0x969696, roughness: 0.78, map, clearcoat: 0.7, clearcoatRoughness: 0.3 })
}

const sideMaterial = (): MeshLambertMaterial => {
  const map = wheelGrain(23, 0.4)
  map.repeat.set(4, 4)
  return new MeshLambertMaterial({ color: 0x8f8f8d, map })
}

/** Every material of the scene, made once a scene and disposed of with it. */
export const createMaterials = ({ touch, dark, software }: Looks) => ({
  ...(software ? paintedSteels(dark) : mirroringSteels()),
  moving: new MeshLambertMaterial({ color: 0x3a4245 }),
  fixed: new MeshLambertMaterial({ color: 0xaab1ad }),
  rim: rimMaterial(software),
  side: sideMaterial(),
  bore: new MeshLambertMaterial({ color: 0x4a4f50 }),
  arrow: new MeshBasicMaterial({ color: 0xffffff }),
  dot: new MeshBasicMaterial({ color: 0x16191a }),
  touch: new MeshBasicMaterial({ color: touch, toneMapped: false, transparent: true, opacity: 0.92 }),
})

export type SceneMaterials = ReturnType<typeof createMaterials>
