import {
  BackSide,
  type BufferGeometry,
  Color,
  Mesh,
  MeshBasicMaterial,
  PlaneGeometry,
  PMREMGenerator,
  Scene,
  SphereGeometry,
  type Texture,
  type WebGLRenderer,
} from 'three'

/** A soft panel of light: where, how large, how bright; it faces the middle. */
interface Panel {
  readonly at: readonly [number, number, number]
  readonly width: number
  readonly height: number
  readonly light: number
}

/** Large soft one upper right front, one behind, one at the side, a dim one below for the face
 * that a lifted blade shows, and a narrow strip for the wheel's sheen. */
const panels: readonly Panel[] = [
  { at: [5, 6, 7], width: 6, height: 3.6, light: 1.95 },
  { at: [-1, 7, -6], width: 8, height: 3.5, light: 3 },
  { at: [-9, 2, 2], width: 3, height: 6, light: 0.8 },
  { at: [1, -8, 2], width: 9, height: 7, light: 0.55 },
  { at: [3, 8.5, 0.5], width: 0.8, height: 6, light: 4.2 },
]

/** Light of the dim shell round everything, ground to sky. */
const shells = { light: [0.08, 0.42], dark: [0.02, 0.23] } as const

const shellGeometry = (dark: boolean): BufferGeometry => new SphereGeometry(12, 16, dark ? 10 : 12)

const shellMaterial = (dark: boolean): MeshBasicMaterial => {
  const [low, high] = shells[dark ? 'dark' : 'light']
  const material = new MeshBasicMaterial({ side: BackSide })
  material.onBeforeCompile = (shader) => {
    shader.vertexShader = `varying float vUp;\n${shader.vertexShader}`.replace(
      '#include <begin_vertex>',
      '#include <begin_vertex>\nvUp = position.y / 12.0;',
    )
    shader.fragmentShader = `varying float vUp;\n${shader.fragmentShader}`.replace(
      '#include <color_fragment>',
      `#include <color_fragment>\ndiffuseColor.rgb = vec3(mix(${low.toFixed(3)}, ${high.toFixed(3)}, 0.5 + 0.5 * vUp));`,
    )
  }
  return material
}

const panelMesh = ({ at, width, height, light }: Panel): Mesh<PlaneGeometry, MeshBasicMaterial> => {
  const mesh = new Mesh(
    new PlaneGeometry(width, height),
    new MeshBasicMaterial({ color: new Color(light, light, light) }),
  )
  mesh.position.set(...at)
  mesh.lookAt(0, 0, 0)
  return mesh
}

/** What the steel mirrors, painted in code once for each theme. @returns a texture the caller disposes of */
export const paintEnvironment = (renderer: WebGLRenderer, dark: boolean): Texture => {
  const scene = new Scene()
  const meshes = [new Mesh(shellGeometry(dark), shellMaterial(dark)), ...panels.map(panelMesh)]
  scene.add(...meshes)
  const generator = new PMREMGenerator(renderer)
  const { texture } = generator.fromScene(scene, 0.03)
  generator.dispose()
  for (const { geometry, material } of meshes) {
    geometry.dispose()
    material.dispose()
  }
  return texture
}
