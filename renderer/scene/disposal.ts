import { type Material, Mesh, type Object3D, type Texture } from 'three'

/** Frees the geometries of a part; materials are shared and freed by `disposeMaterials`. */
export const disposePart = (part: Object3D): void => {
  part.traverse((child) => {
    if (child instanceof Mesh) child.geometry.dispose()
  })
}

const isTexture = (value: unknown): value is Texture =>
  typeof value === 'object' && value !== null && 'isTexture' in value

/** Frees materials and the textures they carry. */
export const disposeMaterials = (materials: Readonly<Record<string, Material>>): void => {
  for (const material of Object.values(materials)) {
    for (const value of Object.values(material)) if (isTexture(value)) value.dispose()
    material.dispose()
  }
}
