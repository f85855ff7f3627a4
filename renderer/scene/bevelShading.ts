import { Color, type Material, type Texture } from 'three'

/** What a bevel's shading reads; the blade puts its own field in. */
export interface BevelUniforms {
  readonly lost: { value: Texture | null }
  readonly ink: { readonly value: Color }
  readonly ground: { readonly value: Color }
  /** 1: scratches and torn ink; 0: flat, for paper. */
  readonly grain: { readonly value: number }
}

/** Bright ground steel, and paper, linear light. */
const GROUND_STEEL = new Color(0.62, 0.63, 0.62)
const PAPER = new Color(1, 1, 1)

/** Ink is matt and keeps its colour where steel mirrors something dark: this makes up for it. */
const INK_LIGHT = 1.5

export const bevelUniforms = (inkColour: string, flat: boolean): BevelUniforms => ({
  lost: { value: null },
  ink: { value: new Color(inkColour).multiplyScalar(flat ? 1 : INK_LIGHT) },
  ground: { value: flat ? PAPER : GROUND_STEEL },
  grain: { value: flat ? 0 : 1 },
})

/**
 * Scratches run through the bevel, from heel to edge, as the rim does; their width is that of a coarse grain. Ink tears along
 * them by up to a quarter of a millimetre: TEAR is that as a share of a bevel eight millimetres long.
 */
const HEAD = `
uniform sampler2D lostField;
uniform vec3 inkColour;
uniform vec3 groundColour;
uniform float grainShare;
varying vec2 vCell;
varying vec2 vPlaceMm;
float bevelHash(float at) { return fract(sin(at * 12.9898) * 43758.5453); }
float scratchAt(float uMm, float vMm, float perMm) {
  float across = uMm * perMm;
  float line = floor(across);
  float along = vMm * 0.22 + 7.0 * bevelHash(line + 91.0);
  float fade = sin(3.14159 * fract(across)) * sin(3.14159 * fract(along));
  return 1.6 * fade * (bevelHash(line + 17.0 * floor(along)) - 0.5);
}
const float TEAR = 0.03;
`

/**
 * Along the edge the last of the bevel catches the light where it is ground, as does the corner at the heel: over these shares
 * of the way from node to node.
 */
const EDGE_NODES = 0.8
const EDGE_LIGHT = 0.75
const HEEL_LIGHT = 0.22

const SHADE = `
float fine = clamp(1.0 - 9.0 * fwidth(vPlaceMm.x), 0.0, 1.0);
float scratch = grainShare * (scratchAt(vPlaceMm.x, vPlaceMm.y, 2.6) + 0.8 * fine * scratchAt(vPlaceMm.x, vPlaceMm.y, 9.0));
float torn = texture2D(lostField, vec2(vCell.x + 2.0 * TEAR * scratch, vCell.y)).r;
float inked = 1.0 - step(1.0, torn);
float nodes = float(textureSize(lostField, 0).x);
float fromEdge = vCell.x * nodes - 0.5;
float gleam = ${EDGE_LIGHT.toFixed(2)} * (1.0 - smoothstep(0.0, ${EDGE_NODES.toFixed(2)}, fromEdge))
  + ${HEEL_LIGHT.toFixed(2)} * smoothstep(nodes - 1.0 - ${(EDGE_NODES / 2).toFixed(2)}, nodes - 1.0, fromEdge);
vec3 bare = groundColour * (1.0 + 0.34 * scratch + grainShare * gleam * (1.0 + 0.5 * scratch));
vec3 inky = inkColour * (1.0 + 0.12 * scratch);
diffuseColor.rgb *= mix(bare, inky, inked);
`

/** Lets a material show ink, bare steel and scratches, whatever its way of taking light. */
export const shadeBevel = <M extends Material>(material: M, uniforms: BevelUniforms): M => {
  const before = material.onBeforeCompile
  material.onBeforeCompile = (shader, renderer) => {
    before(shader, renderer)
    shader.uniforms.lostField = uniforms.lost
    shader.uniforms.inkColour = uniforms.ink
    shader.uniforms.groundColour = uniforms.ground
    shader.uniforms.grainShare = uniforms.grain
    shader.vertexShader =
      `attribute vec2 cell;\nvarying vec2 vCell;\nvarying vec2 vPlaceMm;\n${shader.vertexShader}`.replace(
        '#include <begin_vertex>',
        '#include <begin_vertex>\nvCell = cell;\nvPlaceMm = position.xy;',
      )
    shader.fragmentShader = `${HEAD}${shader.fragmentShader}`
      .replace('#include <color_fragment>', `#include <color_fragment>\n${SHADE}`)
      .replace(
        '#include <roughnessmap_fragment>',
        '#include <roughnessmap_fragment>\nroughnessFactor = mix(roughnessFactor, 0.62, inked);',
      )
      .replace(
        '#include <metalnessmap_fragment>',
        '#include <metalnessmap_fragment>\nmetalnessFactor = mix(metalnessFactor, 0.07, inked);',
      )
  }
  material.userData.bevel = uniforms
  return material
}

/** Gives the bevel the field it is to show. */
export const showLostField = (material: Material, texture: Texture): void => {
  const uniforms = material.userData.bevel as BevelUniforms | undefined
  if (uniforms) uniforms.lost.value = texture
}
