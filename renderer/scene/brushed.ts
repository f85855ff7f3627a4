import { type Material, type MeshMatcapMaterial, type Texture, Vector3 } from 'three'
import { BRUSH_TILE_MM } from './textures.ts'

/** Where the large soft panels stand in the scene (mm), and their light: the key at upper right, one below for a lifted blade. */
const panels = [
  { atMm: [640, 640, 690], light: 0.5 },
  { atMm: [60, -900, 420], light: 0.26 },
] as const

/** Widths of a panel's mirror image: along the strokes it stays as it is, across them it is drawn out (tangent of the lean). */
const IMAGE_ALONG = 0.13
const IMAGE_ACROSS = 0.62
/** How far a stroke's flank leans (tangent), and how much its depth darkens. */
const STROKE_LEAN = 1.1
const STROKE_SHADE = 1.1
/** Share of what the painted ball gives that strokes leave of it, beside the panels' images. */
const SHELL_SHARE = 0.6
/** Broken edges of the blade: their width (mm), and the light they catch beyond that of the face. */
const ARRIS_MM = 0.32
const ARRIS_LIGHT = 0.42

const glsl = (value: number): string => value.toFixed(3)
const varyings = `
varying vec2 vOnBladeMm;
flat varying vec3 vAcross;
flat varying vec3 vAlong;
${panels.map((_, at) => `flat varying vec3 vPanel${at};`).join('\n')}
`

const PLACE = `
vOnBladeMm = position.xy;
vAcross = normalMatrix * vec3(1.0, 0.0, 0.0);
vAlong = normalMatrix * vec3(0.0, 1.0, 0.0);
${panels.map(({ atMm }, at) => `vPanel${at} = (viewMatrix * vec4(${atMm.map(glsl).join(', ')}, 1.0)).xyz;`).join('\n')}
`

/** A panel's light falls off with the lean that a mirror would need to show it: slowly across the strokes, soon along them. */
const HEAD = `
${varyings}
uniform sampler2D brush;
uniform float halfWidthMm;
uniform vec3 slotMm;
float panelOn(vec3 panel, vec3 eye, vec3 face, float lean) {
  vec3 mirror = normalize(panel + vViewPosition) + eye;
  float upright = dot(mirror, face);
  if (upright <= 0.05) return 0.0;
  float along = dot(mirror, vAlong) / upright * ${glsl(1 / IMAGE_ALONG)};
  float across = (dot(mirror, vAcross) / upright + lean) * ${glsl(1 / IMAGE_ACROSS)};
  return exp2(-(along * along + across * across));
}
float arrisAt(float fromEdgeMm) {
  float wideMm = max(${glsl(ARRIS_MM)}, fwidth(fromEdgeMm));
  return step(0.0, fromEdgeMm) * clamp(1.5 - fromEdgeMm / wideMm, 0.0, 1.0);
}
`

const panelLight = panels.map(({ light }, at) => `${glsl(light)} * panelOn(vPanel${at}, viewDir, normal, lean)`)

const SHADE = `
float flatShare = smoothstep(0.9, 0.98, abs(dot(cross(vAcross, vAlong), normal)));
vec2 stroke = texture2D(brush, vOnBladeMm / vec2(${BRUSH_TILE_MM.map(glsl).join(', ')})).rg - 0.5;
float lean = flatShare * ${glsl(STROKE_LEAN)} * stroke.g;
float depth = 1.0 + ${glsl(STROKE_SHADE)} * flatShare * stroke.r;
float slotAtMm = length(vec2(vOnBladeMm.x, vOnBladeMm.y - clamp(vOnBladeMm.y, slotMm.x, slotMm.y))) - slotMm.z;
float arris = max(arrisAt(halfWidthMm - abs(vOnBladeMm.x)), step(0.01, slotMm.z) * arrisAt(slotAtMm));
vec3 panelsMirrored = vec3(${panelLight.join(' + ')} + ${glsl(ARRIS_LIGHT)} * flatShare * arris);
vec3 outgoingLight = diffuseColor.rgb * depth * (${glsl(SHELL_SHARE)} * matcapColor.rgb * (1.0 + 0.6 * lean) + panelsMirrored);
`

/**
 * Lets painted steel show brush strokes along the blade. A painted ball shows a flat face in one shade; strokes draw the
 * panels' mirror images out across them, and panels stand at a place in the room: so the face shades off along the blade.
 */
export const brushPainted = (
  material: MeshMatcapMaterial,
  { strokes, bladeWidthMm }: { readonly strokes: Texture; readonly bladeWidthMm: number },
): MeshMatcapMaterial => {
  const slotMm = { value: new Vector3() }
  material.userData.slotMm = slotMm.value
  material.addEventListener('dispose', () => strokes.dispose())
  material.onBeforeCompile = (shader) => {
    Object.assign(shader.uniforms, { brush: { value: strokes }, slotMm, halfWidthMm: { value: bladeWidthMm / 2 } })
    shader.vertexShader = `${varyings}${shader.vertexShader}`.replace(
      '#include <begin_vertex>',
      `#include <begin_vertex>\n${PLACE}`,
    )
    shader.fragmentShader = shader.fragmentShader
      .replace('void main() {', `${HEAD}\nvoid main() {`)
      .replace('vec3 outgoingLight = diffuseColor.rgb * matcapColor.rgb;', SHADE)
  }
  return material
}

/** Tells brushed steel where its slot runs, middle to middle of its round ends (mm), so that it breaks the slot's edges. */
export const showSlot = ({ userData }: Material, fromMm: number, toMm: number, radiusMm: number): void => {
  if (userData.slotMm instanceof Vector3) userData.slotMm.set(fromMm, toMm, radiusMm)
}
