import { expect, test } from 'vitest'
import { createTexts } from '../../main/texts.ts'
import { momentSentence } from '../../renderer/grind/sentence.ts'
import { moment } from './moments.ts'

const { t } = createTexts()
const facts = {
  stepsPerSweep: 24,
  wantedMm: 0.5,
  foretoldMm: null,
  lifted: false,
  inWords: (mm: number) => `${mm.toFixed(2)} mm`,
}
test('paused at a stop', () => {
  expect(momentSentence(t, moment({}), facts)).toBe(
    'Paused at sweep 40 of 120. The load is on the left and the fixture stands at its left stop. Both corners are 0.19 mm back, of 0.50 mm wanted. Ink is left on 29 % of the bevel.',
  )
})

test('corners that differ are told apart', () => {
  const said = momentSentence(t, moment({ reliefRightMm: 0.3, loadPlaceMm: 0, bearing: 'none', playing: true }), facts)
  expect(said).toContain('Grinding, sweep 40 of 120. The load is in the middle and no stop bears.')
  expect(said).toContain('The left corner is 0.19 mm back, the right 0.30 mm, of 0.50 mm wanted.')
})

test('lifted, nothing is said of the load; before the first step, nothing is ground', () => {
  expect(momentSentence(t, moment({}), { ...facts, lifted: true })).not.toContain('load')
  expect(momentSentence(t, moment({ step: 0, sweep: 0, inkLeftShare: 1 }), facts)).toBe(
    'Ready to grind 120 sweeps. The corners are to come 0.50 mm back. The whole bevel carries ink.',
  )
})

test('before the first step, a grind that will end elsewhere than wanted says so', () => {
  const said = (foretoldMm: number, wantedMm = 0.5) =>
    momentSentence(t, moment({ step: 0, sweep: 0, inkLeftShare: 1 }), { ...facts, wantedMm, foretoldMm })
  expect(said(0.23)).toContain('are to come 0.50 mm back; as it is set, they will come 0.23 mm back.')
  expect(said(0.6)).toContain('0.60 mm')
  expect(said(0.46)).not.toContain('as it is set')
  expect(said(0.015, 0)).not.toContain('as it is set')
})

test('every sentence it can say is in the catalogue', () => {
  for (const loadPlaceMm of [-20, 0, 20]) {
    for (const bearing of ['none', 'left', 'right', 'pin'] as const) {
      for (const inkLeftShare of [0, 0.5, 1]) {
        expect(momentSentence(t, moment({ loadPlaceMm, bearing, inkLeftShare }), facts)).not.toMatch(/sentence\./)
      }
    }
  }
  expect(momentSentence(t, moment({ step: 2880, sweep: 120 }), facts)).toContain('All 120 sweeps are ground.')
})
