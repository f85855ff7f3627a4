import type { Moment } from '../../renderer/grind/useLiveGrind.ts'

/** Paused after 40 sweeps of 120, at the left stop, both corners a fifth of a millimetre back. */
export const moment = (parts: Partial<Moment> = {}): Moment => ({
  run: 1,
  step: 960,
  sweep: 40,
  playing: false,
  held: false,
  lastStep: 2880,
  handFromStep: null,
  yawRad: -0.02,
  tiltRad: 0.5,
  traverseMm: 8,
  loadPlaceMm: -24,
  bearing: 'left',
  reliefLeftMm: 0.19,
  reliefRightMm: 0.191,
  volumeRemovedMm3: 20,
  inkLeftShare: 0.29,
  touchingMm: 14,
  mostPressureNPerMm: 2.4,
  ...parts,
})
