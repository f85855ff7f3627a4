import {
  Color,
  DoubleSide,
  type Material,
  MeshBasicMaterial,
  MeshLambertMaterial,
  MeshMatcapMaterial,
  MeshPhysicalMaterial,
  MeshStandardMaterial,
  type MeshStandardMaterialParameters,
} from 'three'
import { bevelUniforms, shadeBevel } from './bevelShading.ts'
import { paintMatcap } from './matcap.ts'
import { contactShade, meniscusLine, wetSheen } from './rimTextures.ts'
import { brushedSteel, wheelGrain } from './textures.ts'

/** What the materials depend on. Colours that carry meaning come from the window's tokens, as CSS colours. */
export interface Looks {
  readonly touch: string
  readonly ink: string
  readonly dark: boolean
  /** White ground, black lines: nothing takes light. */
  readonly print: boolean
  /** Drawn by the processor alone: steel is painted, not mirrored. */
  readonly software: boolean
  /** The wheel runs in water. */
  readonly wet: boolean
  readonly bladeWidthMm: number
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
const mirroringSteels = (looks: Looks) => {
  const { colour: map, roughness: roughnessMap } = brushedSteel()
  const brushed = { color: 0xb0b2b0, roughness: 0.42, map, roughnessMap }
  return {
    back: mirroringSteel({ ...brushed, ...underneath }),
    tip: mirroringSteel({ ...brushed, flatShading: true }),
    bevel: shadeBevel(mirroringSteel({ metalness: 0.75, roughness: 0.4 }), bevelUniforms(looks.ink, false)),
    bar: mirroringSteel({ color: 0xb9bcba, roughness: 0.24 }),
    screw: mirroringSteel({ color: 0x9a9e9c, roughness: 0.34 }),
  }
}

/**
 * A painted ball shows a flat face in one shade. Brushed steel draws the lights out along it: so the blade is shaded by the
 * place on it, brightest towards the edge and the left, where the large panel stands.
 */
const drawnOut = (material: MeshMatcapMaterial): MeshMatcapMaterial => {
  material.onBeforeCompile = (shader) => {
    shader.vertexShader = `varying vec2 vOnBladeMm;\n${shader.vertexShader}`.replace(
      '#include <begin_vertex>',
      '#include <begin_vertex>\nvOnBladeMm = position.xy;',
    )
    shader.fragmentShader = `varying vec2 vOnBladeMm;
${shader.fragmentShader}`.replace(
      '#include <color_fragment>',
      `#include <color_fragment>
diffuseColor.rgb *= mix(1.12, 0.62, smoothstep(0.0, 190.0, vOnBladeMm.y + 0.7 * vOnBladeMm.x));`,
    )
  }
  return material
}

const paintedSteels = ({ dark, ink }: Looks) => {
  const matcap = paintMatcap(dark)
  const { colour: map } = brushedSteel()
  const brushed = { color: 0xd2d4d2, matcap, map }
  return {
    back: drawnOut(new MeshMatcapMaterial({ ...brushed, ...underneath })),
    tip: drawnOut(new MeshMatcapMaterial({ ...brushed, flatShading: true })),
    bevel: shadeBevel(new MeshMatcapMaterial({ matcap }), bevelUniforms(ink, false)),
    bar: new MeshMatcapMaterial({ color: 0xaeb2b0, matcap }),
    screw: new MeshMatcapMaterial({ color: 0xb4b8b6, matcap }),
  }
}

/** Water darkens a stone by about this. */
const WET_SHARE = 0.66

const stoneColour = (value: number, wet: boolean): Color => new Color(value).multiplyScalar(wet ? WET_SHARE : 1)

const rimMaterial = ({ software, wet }: Looks): MeshLambertMaterial | MeshPhysicalMaterial => {
  const map = wheelGrain(11, 0.34)
  map.repeat.set(12, 1)
  if (software) return new MeshLambertMaterial({ color: stoneColour(0xa4a4a2, wet), map })
  const clear = wet ? { clearcoat: 0.7, clearcoatRoughness: 0.22 } : {}
  return new MeshPhysicalMaterial({ color: stoneColour(0x969696, wet), roughness: 0.78, map, ...clear })
}

const sideMaterial = (): MeshLambertMaterial => {
  const map = wheelGrain(23, 0.4)
  map.repeat.set(4, 4)
  return new MeshLambertMaterial({ color: 0x8f8f8d, map })
}

const matter = (looks: Looks) => ({
  ...(looks.software ? paintedSteels(looks) : mirroringSteels(looks)),
  // On a dark ground the moving part is lighter, or it would be lost in it.
  moving: new MeshLambertMaterial({ color: looks.dark ? 0x6c7674 : 0x3a4245 }),
  fixed: new MeshLambertMaterial({ color: 0xaab1ad }),
  rim: rimMaterial(looks),
  side: sideMaterial(),
  bore: new MeshLambertMaterial({ color: 0x4a4f50 }),
  finger: new MeshLambertMaterial({ color: 0xc6b7a6 }),
  arrow: new MeshBasicMaterial({ color: 0xffffff }),
  dot: new MeshBasicMaterial({ color: 0x16191a }),
  burr: new MeshBasicMaterial({ color: 0xffffff, toneMapped: false, side: DoubleSide }),
})

/** On paper every part is white; its lines lie a little before it. */
const paper = ({ ink }: Looks) => {
  const white = (): Material => new MeshBasicMaterial({ color: 0xffffff, toneMapped: false, ...behindLines })
  const black = (): Material => new MeshBasicMaterial({ color: 0x000000, toneMapped: false })
  return {
    ...{ back: white(), tip: white(), bar: white(), screw: white(), moving: white(), fixed: white() },
    ...{ rim: white(), side: white(), bore: white(), finger: white() },
    bevel: shadeBevel(
      new MeshBasicMaterial({ color: 0xffffff, toneMapped: false, ...behindLines }),
      bevelUniforms(ink, true),
    ),
    ...{ arrow: black(), dot: black() },
    burr: new MeshBasicMaterial({ color: 0x000000, toneMapped: false, side: DoubleSide }),
  }
}

const behindLines = { polygonOffset: true, polygonOffsetFactor: 3, polygonOffsetUnits: 6 } as const

/** Painted on a surface: sees through, hides nothing behind it. */
const painted = (color: number, map: MeshBasicMaterial['map']): MeshBasicMaterial =>
  new MeshBasicMaterial({
    ...{ color, map, toneMapped: false, transparent: true, depthWrite: false },
    ...{ polygonOffset: true, polygonOffsetFactor: -1, polygonOffsetUnits: -1 },
  })

/** Every material of the scene, made once a scene and disposed of with it. */
export const createMaterials = (looks: Looks) => ({
  ...(looks.print ? paper(looks) : matter(looks)),
  touch: new MeshBasicMaterial({ color: looks.touch, toneMapped: false, transparent: true, vertexColors: true }),
  shade: painted(0x000000, contactShade(looks.bladeWidthMm)),
  meniscus: painted(0xffffff, meniscusLine(looks.bladeWidthMm)),
  sheen: painted(0xf6faf8, wetSheen()),
})

export type SceneMaterials = ReturnType<typeof createMaterials>
