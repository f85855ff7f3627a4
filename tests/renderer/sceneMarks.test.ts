import {
  BufferAttribute,
  BufferGeometry,
  DataUtils,
  type InterleavedBufferAttribute,
  type Material,
  Mesh,
  MeshBasicMaterial,
} from 'three'
import { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js'
import { expect, test } from 'vitest'
import { INK_THICKNESS_MM } from '../../geometry/ink.ts'
import { jobSchema } from '../../geometry/job.ts'
import { type SetUp, setUpOf } from '../../geometry/setUp.ts'
import { BEARING_RADIUS_MM, screwPlaceMm } from '../../renderer/scene/fixture.ts'
import { type PartName, partNames } from '../../renderer/scene/layers.ts'
import { carriedOn, createLostField } from '../../renderer/scene/lostField.ts'
import { buildMachine } from '../../renderer/scene/machine.ts'
import { burrMm, touchHeightMm } from '../../renderer/scene/marks.ts'
import { createMaterials } from '../../renderer/scene/materials.ts'
import { outline } from '../../renderer/scene/outlines.ts'
import { machineFigures, placeBladeOnBase, under } from '../../renderer/scene/placement.ts'
import { block } from '../../renderer/scene/solids.ts'
import type { RunShape } from '../../renderer/worker/protocol.ts'

const [acrossCount, throughCount] = [2, 6]
const shape: RunShape = {
  ...{ run: 1, acrossCount, throughCount, stepsPerSweep: 8, sweeps: 1 },
  uMm: Float64Array.of(-1, 1),
  nMm: Float64Array.from({ length: throughCount }, (_, j) => j),
  vStartMm: new Float64Array(acrossCount * throughCount),
}

/** The field after these losses, in thicknesses of ink, on its first column; the second is untouched. */
const shown = (...lost: readonly number[]): number[] => {
  const field = createLostField(shape)
  field.fill(Float64Array.from({ length: acrossCount * throughCount }, (_, at) => (lost[at] ?? 0) * INK_THICKNESS_MM))
  return Array.from(field.texture.image.data as unknown as Uint16Array, (half) => DataUtils.fromHalfFloat(half))
}

test('ink shows as gone where more than its thickness is lost, and nowhere else', () => {
  const field = shown(6, 4, 2, 0.5, 0, 0)
  expect(field.map((value) => value > 1)).toEqual([true, true, true, ...Array(9).fill(false)])
})

test('beside the last bare node the loss is carried on straight, so that the border falls between nodes', () => {
  expect(carriedOn(2, 4)).toBe(0)
  expect(carriedOn(2, 5)).toBe(-1)
  // Never further than one node beyond.
  expect(carriedOn(2, 40)).toBe(-2)
  const [, , bare, beside] = shown(40, 20, 5, 0, 0, 0)
  expect(bare).toBeCloseTo(5, 1)
  expect(beside).toBeCloseTo(-5, 1)
  expect(shown(0, 0, 0, 2, 5, 8)[2]).toBeCloseTo(-1, 2)
})

test('the burr is hinted only where the wheel has cut through to the edge, and is the same every time', () => {
  expect(burrMm(INK_THICKNESS_MM, 3)).toBe(0)
  const teeth = Array.from({ length: 40 }, (_, i) => burrMm(0.01, i))
  expect(Math.min(...teeth)).toBeGreaterThan(0.2)
  expect(new Set(teeth).size, 'ragged').toBeGreaterThan(30)
  expect(teeth).toEqual(Array.from({ length: 40 }, (_, i) => burrMm(0.2, i)))
})

test('the touch band is there wherever the wheel presses, and grows with the pressure to the end of its scale', () => {
  expect(touchHeightMm(0, 4)).toBe(0)
  expect(touchHeightMm(1e-3, 4)).toBeGreaterThan(0.5)
  expect(touchHeightMm(2, 4)).toBeGreaterThan(touchHeightMm(1, 4))
  expect(touchHeightMm(8, 4)).toBe(touchHeightMm(4, 4))
})

const job = jobSchema.parse({
  version: 1,
  blade: { widthMm: 57, thicknessMm: 3.2, seatAngleDeg: 12, bevelSide: 'up', currentBevelDeg: 25 },
  station: { wheelDiameterMm: 250, wheelWidthMm: 50, barDiameterMm: 12, barOffsetMm: 0 },
  fixture: { kind: 'steered', seatOffsetMm: 15, guideArmMm: 75, screwPitchMm: 0.8 },
  aim: { bevelAngleDeg: 25, projectionMm: 130, reliefMm: 0.5 },
})

const setUpFor = (): SetUp => {
  const setUp = setUpOf(job)
  if (!setUp.ok) throw new Error(setUp.problems[0]?.code)
  return setUp.value
}

test.each([
  ['left', -1],
  ['right', 1],
] as const)('yawed as far as the %s stop lets it, the guide bearing touches the tip of its screw', (side, sense) => {
  const figures = machineFigures(job, setUpFor())
  const [playMm, armMm] = [0.8, 75]
  const blade = new Float64Array(16)
  // geometry/freedom.ts: a stop's slope is its free play over the arm.
  placeBladeOnBase(figures, sense * Math.atan(playMm / armMm), blade)
  const [bearingMm] = under(blade, figures.pivotUMm, figures.pivotVMm + armMm, 1)
  const tipMm = screwPlaceMm(side, figures.pivotUMm, playMm).tipMm
  expect(Math.abs(tipMm - bearingMm) - BEARING_RADIUS_MM).toBeCloseTo(0, 3)
})

const machineWith = (print: boolean) => {
  const looks = { touch: '#b93a00', ink: '#26389c', dark: false, software: true, wet: true, bladeWidthMm: 57, print }
  const run = { ...shape, vStartMm: Float64Array.from({ length: 12 }, (_, at) => 2 * (at % throughCount)) }
  return buildMachine(
    job,
    setUpFor(),
    run,
    { rotation: 'intoEdge', dot: 'left', wet: true, print },
    createMaterials(looks),
  )
}

const nothingHidden = Object.fromEntries(partNames.map((name) => [name, false])) as Record<PartName, boolean>

test('painted steel knows where its slot runs, and what shades the rim is drawn after the wheel and before the blade', () => {
  const looks = {
    touch: '#b93a00',
    ink: '#26389c',
    dark: false,
    software: true,
    wet: true,
    bladeWidthMm: 57,
    print: false,
  }
  const materials = createMaterials(looks)
  const run = { ...shape, vStartMm: Float64Array.from({ length: 12 }, (_, at) => 2 * (at % throughCount)) }
  const { root } = buildMachine(
    job,
    setUpFor(),
    run,
    { rotation: 'intoEdge', dot: 'left', wet: true, print: false },
    materials,
  )
  const { slotMm } = materials.back.userData
  // From 26 mm above the join, 4 mm above the highest heel (10 mm), to 18 mm below the bar, round ends of 5 mm each.
  expect([slotMm.x, slotMm.y, slotMm.z]).toEqual([45, 107, 5])
  const orders = new Map<Material, number>()
  root.traverse((child) => {
    if (child instanceof Mesh && !Array.isArray(child.material)) orders.set(child.material, child.renderOrder)
  })
  const order = (name: 'rim' | 'sheen' | 'shade' | 'meniscus' | 'back') => orders.get(materials[name]) ?? Number.NaN
  for (const painted of ['sheen', 'shade', 'meniscus'] as const) {
    expect(order(painted)).toBeGreaterThan(order('rim'))
    expect(order(painted)).toBeLessThan(order('back'))
    expect(materials[painted].transparent, 'else it would come last').toBe(false)
  }
})

test('a part taken away takes with it what only it carries', () => {
  const machine = machineWith(false)
  machine.hideParts(nothingHidden)
  expect(machine.shownParts()).toEqual([...partNames])
  machine.hideParts({ ...nothingHidden, blade: true })
  expect(machine.shownParts()).toEqual(['wheel', 'fixture', 'bar'])
  machine.hideParts({ ...nothingHidden, wheel: true })
  expect(machine.shownParts()).toEqual(['fixture', 'bar', 'blade', 'marks', 'fingers'])
})

test('on paper the lines of the ground end follow its points, and blocks have sharp edges, one line each', () => {
  const start = Float64Array.from({ length: 12 }, (_, at) => 2 * (at % throughCount))
  const tip = new Mesh(new BufferGeometry().setAttribute('position', new BufferAttribute(new Float32Array(48), 3)))
  const solid = block({ x: [0, 4], y: [0, 5], z: [0, 6] }, new MeshBasicMaterial())
  const lines = outline([tip, solid], tip, { ...shape, vStartMm: start })
  const endsOf = (mesh: Mesh) => {
    const drawn = mesh.children.find((child) => child instanceof LineSegments2)
    return drawn?.geometry.getAttribute('instanceStart') as InterleavedBufferAttribute
  }
  expect(endsOf(solid).count).toBe(12)
  const ends = endsOf(tip)
  tip.geometry.getAttribute('position').setXYZ(0, 1, 2, 3)
  expect(ends.getY(0)).toBe(0)
  lines.follow()
  expect([ends.getX(0), ends.getY(0), ends.getZ(0)]).toEqual([1, 2, 3])
  lines.dispose()
})

test('on paper parts have lines and there is no shadow', () => {
  const linesOf = (print: boolean): number => {
    let count = 0
    machineWith(print).root.traverse((child) => {
      if (child instanceof LineSegments2) count++
    })
    return count
  }
  expect(linesOf(false)).toBe(0)
  expect(linesOf(true)).toBeGreaterThan(20)
  const paper = machineWith(true)
  paper.hideParts(nothingHidden)
  expect(paper.shownParts()).not.toContain('shadow')
})
