import {
  Color,
  CustomBlending,
  DoubleSide,
  type Material,
  MeshBasicMaterial,
  MeshLambertMaterial,
  MeshMatcapMaterial,
  MeshPhysicalMaterial,
  MeshStandardMaterial,
  type MeshStandardMaterialParameters,
  OneFactor,
  OneMinusSrcAlphaFactor,
  SrcAlphaFactor,
} from 'three'
import { bevelUniforms, shadeBevel } from './bevelShading.ts'
import { brushPainted } from './brushed.ts'
import { paintMatcap } from './matcap.ts'
import { clampShade, contactShade, meniscusLine, wetSheen } from './rimTextures.ts'
import { brushedSteel, brushStrokes, rimGrain, sideGrain, stone } from './textures.ts'

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
  const brushed = { color: 0x979997, roughness: 0.42, map, roughnessMap }
  return {
    back: mirroringSteel({ ...brushed, ...underneath }),
    tip: mirroringSteel({ ...brushed, flatShading: true }),
    bevel: shadeBevel(mirroringSteel({ metalness: 0.75, roughness: 0.4 }), bevelUniforms(looks.ink, false)),
    bar: mirroringSteel({ color: 0xb9bcba, roughness: 0.24 }),
    screw: mirroringSteel({ color: 0x9a9e9c, roughness: 0.34 }),
  }
}

const paintedSteels = ({ dark, ink, bladeWidthMm }: Looks) => {
  const matcap = paintMatcap(dark)
  const brush = { strokes: brushStrokes(), bladeWidthMm }
  const brushed = { color: 0xb6b8b6, matcap }
  return {
    back: brushPainted(new MeshMatcapMaterial({ ...brushed, ...underneath }), brush),
    tip: brushPainted(new MeshMatcapMaterial({ ...brushed, flatShading: true }), brush),
    bevel: shadeBevel(new MeshMatcapMaterial({ matcap }), bevelUniforms(ink, false)),
    bar: new MeshMatcapMaterial({ color: 0xb8bcba, matcap: paintMatcap(dark, true) }),
    screw: new MeshMatcapMaterial({ color: 0xb4b8b6, matcap }),
  }
}

/** Water darkens a stone by about this. */
const WET_SHARE = 0.66

const stoneColour = (value: number, wet: boolean): Color => new Color(value).multiplyScalar(wet ? WET_SHARE : 1)

const rimMaterial = ({ software, wet }: Looks): MeshLambertMaterial | MeshPhysicalMaterial => {
  const map = stone(rimGrain())
  map.repeat.set(12, 1)
  if (software) return new MeshLambertMaterial({ color: stoneColour(0xa4a4a2, wet), map })
  const clear = wet ? { clearcoat: 0.7, clearcoatRoughness: 0.22 } : {}
  return new MeshPhysicalMaterial({ color: stoneColour(0x969696, wet), roughness: 0.78, map, ...clear })
}

const sideMaterial = (): MeshLambertMaterial => {
  const map = stone(sideGrain())
  map.repeat.set(4, 4)
  return new MeshLambertMaterial({ color: 0xb4b4b1, map })
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
  burr: new MeshBasicMaterial({ color: 0xc4cac7, toneMapped: false, side: DoubleSide }),
})

/** On paper every part is white; its lines lie a little before it. */
const paper = ({ ink }: Looks) => {
  const white = (offset: object = behindLines): Material =>
    new MeshBasicMaterial({ color: 0xffffff, toneMapped: false, ...offset })
  const black = (): Material => new MeshBasicMaterial({ color: 0x000000, toneMapped: false })
  return {
    ...{ back: white(), tip: white(), bar: white(hardlyBehind), screw: white(), moving: white(), fixed: white() },
    ...{ rim: white(), side: white(), bore: white(), finger: white() },
    bevel: shadeBevel(
      new MeshBasicMaterial({ color: 0xffffff, toneMapped: false, ...behindLines }),
      bevelUniforms(ink, true),
    ),
    ...{ arrow: black(), dot: black() },
    burr: new MeshBasicMaterial({ color: 0x000000, toneMapped: false, side: DoubleSide }),
  }
}

const behindLines = { polygonOffset: true, polygonOffsetFactor: 1.5, polygonOffsetUnits: 2 } as const
/** What the bar holds lies a little inside it, and must not show through. */
const hardlyBehind = { polygonOffset: true, polygonOffsetFactor: 0.2, polygonOffsetUnits: 1 } as const

/** Painted on a surface: sees through, hides nothing behind it. */
const painted = (color: number, map: MeshBasicMaterial['map']): MeshBasicMaterial =>
  new MeshBasicMaterial({ color, map, toneMapped: false, transparent: true, depthWrite: false })

/**
 * Painted on the rim: drawn with what hides, right after the wheel and before the blade, whose edge lies a hair under it. So it
 * mixes by factors of its own, which are those of what sees through.
 */
const onRim = (color: number, map: MeshBasicMaterial['map'], opacity = 1): MeshBasicMaterial =>
  new MeshBasicMaterial({
    ...{ color, map, opacity, toneMapped: false, depthWrite: false, blending: CustomBlending },
    ...{ blendSrc: SrcAlphaFactor, blendDst: OneMinusSrcAlphaFactor },
    ...{ blendSrcAlpha: OneFactor, blendDstAlpha: OneMinusSrcAlphaFactor },
  })

const unseen = (material: MeshBasicMaterial, hidden: boolean): MeshBasicMaterial => {
  material.visible = !hidden
  return material
}

/** Where the rim itself mirrors its surroundings, only this much of the sheen is painted on. */
const MIRRORED_SHEEN = 0.35

/** Every material of the scene, made once a scene and disposed of with it. */
export const createMaterials = (looks: Looks) => ({
  ...(looks.print ? paper(looks) : matter(looks)),
  touch: new MeshBasicMaterial({ color: looks.touch, toneMapped: false, transparent: true, vertexColors: true }),
  shade: onRim(0x000000, contactShade(looks.bladeWidthMm)),
  meniscus: onRim(0xffffff, meniscusLine(looks.bladeWidthMm)),
  sheen: onRim(0xf6faf8, wetSheen(), looks.software ? 1 : MIRRORED_SHEEN),
  // Where a shadow map is drawn the clamp throws its own.
  underClamp: unseen(painted(0x000000, clampShade()), looks.print || !looks.software),
})

export type SceneMaterials = ReturnType<typeof createMaterials>
