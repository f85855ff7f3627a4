import { afterAll, describe, expect, it } from 'vitest'
import { runCommand } from '../../main/commandLine/command.ts'
import { commandFolder, expectRefused, jobTextSaying, jobTextWith, soundJob } from './commandBench.ts'

const place = commandFolder()
afterAll(place.remove)

/** A refusal takes milliseconds, and without end where a text makes a reader go back and back; a busy machine takes seconds. */
const QUICK_MS = 20_000

const many = (count: number) => Object.fromEntries(Array.from({ length: count }, (_, index) => [`key${index}`, index]))

const figures: readonly (readonly [string, string, RegExp])[] = [
  ['negative', jobTextWith('blade.widthMm', -57), /^blade\.widthMm \(width\): .*too small: 3 /],
  ['nothing', jobTextWith('blade.widthMm', 0), /^blade\.widthMm .*too small/],
  ['minus nothing', jobTextSaying('blade.widthMm', '-0'), /^blade\.widthMm .*too small/],
  ['the smallest there is', jobTextSaying('blade.widthMm', '5e-324'), /^blade\.widthMm .*too small/],
  ['absurd', jobTextWith('blade.widthMm', 1e9), /^blade\.widthMm .*too large: 120 /],
  ['1e308', jobTextSaying('blade.widthMm', '1e308'), /^blade\.widthMm .*too large: 120 /],
  ['1e999', jobTextSaying('blade.widthMm', '1e999'), /^blade\.widthMm .*larger than any/],
  ['-1e999', jobTextSaying('blade.widthMm', '-1e999'), /^blade\.widthMm .*larger than any/],
  ['NaN', jobTextSaying('blade.widthMm', 'NaN'), /line 1, character 33\. .*written like 57/],
  ['Infinity', jobTextSaying('blade.widthMm', 'Infinity'), /line 1, character 33\./],
  ['NaN in quotes', jobTextWith('blade.widthMm', 'NaN'), /^blade\.widthMm .*a figure, without quotation marks/],
  ['in quotes', jobTextWith('blade.widthMm', '57'), /^blade\.widthMm .*a figure, without quotation marks/],
  ['a list', jobTextWith('blade.widthMm', [57]), /^blade\.widthMm .*a figure/],
  ['true', jobTextWith('blade.widthMm', true), /^blade\.widthMm .*a figure/],
  ['null', jobTextWith('blade.widthMm', null), /^blade\.widthMm .*a figure/],
  ['half a sweep', jobTextWith('motion.sweeps', 2.5), /^motion\.sweeps .*whole/],
  ['sweeps without end', jobTextWith('motion.sweeps', 1e9), /^motion\.sweeps .*too large/],
  ['a wheel of nothing', jobTextWith('station.wheelDiameterMm', 0), /^station\.wheelDiameterMm \(wheel diameter\): /],
  ['relief past any range', jobTextWith('aim.reliefMm', 500), /^aim\.reliefMm \(relief\): .*too large/],
  ['relief below none', jobTextWith('aim.reliefMm', -1), /^aim\.reliefMm .*too small/],
  ['a grid beyond the limit', jobTextWith('grid', { across: 1e6, through: 1e6 }), /^grid\.across .*\ngrid\.through /],
  ['an edge in words', jobTextWith('blade.startEdge', ['a', 0]), /^blade\.startEdge\.0: .*a figure/],
  ['an edge too fine', jobTextWith('blade.startEdge', Array(100_000).fill(0)), /^blade\.startEdge: .*1001/],
]

const entries: readonly (readonly [string, string, RegExp])[] = [
  ['an unknown field', jobTextWith('colour', 'red'), /^colour: There is no entry called “colour” here/],
  ['an unknown field further in', jobTextWith('blade.colour', 'red'), /^blade\.colour: /],
  ['a name that moves the cursor', jobTextWith('blade.a\nb\u001b[2J\u202e', 1), /^blade\.a b \[2J : /],
  ['a name without end', jobTextWith('k'.repeat(5000), 1), /^k{60}…: .{1,140}$/m],
  ['a name of the language', jobTextSaying('version', '1,"__proto__":{"x":1}'), /^__proto__: /],
  ['entries by the thousand', JSON.stringify({ ...soundJob, ...many(200_000) }), /^key\d+: There are more entries/],
  ['a missing field', jobTextWith('blade.widthMm', undefined), /^blade\.widthMm \(width\): This is missing/],
  ['a missing part', jobTextWith('blade', undefined), /^blade: This is missing/],
  ['no version', jobTextWith('version', undefined), /^version: This is missing/],
  ['a newer version', jobTextWith('version', 2), /^version: .*newer version/],
  ['a version beyond all', jobTextSaying('version', '1e400'), /^version: .*larger than any/],
  ['a version of no kind', jobTextWith('version', '1'), /^version: Choose one of these: 1/],
  ['a field given twice', jobTextSaying('blade.widthMm', '57,"widthMm":60'), /^blade\.widthMm .*more than once/],
  ['a part given twice', jobTextSaying('version', '2,"version":1'), /^version: .*more than once/],
  ['a nameless side', jobTextWith('blade.bevelSide', 'sideways'), /^blade\.bevelSide: .*up, down/],
]

const between: readonly (readonly [string, string, RegExp])[] = [
  [
    'a bar inside the wheel',
    jobTextWith('aim', { bevelAngleDeg: 25, barDistanceMm: 126, reliefMm: 0 }),
    /^aim\.barDistanceMm \(axle to bar\): .*inside the wheel.* 131\.0/,
  ],
  ['no triangle', jobTextWith('aim', { projectionMm: 30, barDistanceMm: 400, reliefMm: 0 }), /^aim\.\w+ .*do not meet/],
  ['a wheel over its mark', jobTextWith('station.wheelSpeedRpm', 3000), /^station\.wheelSpeedRpm .*Do not grind/],
  ['one of the triangle', jobTextWith('aim.projectionMm', undefined), /^aim: .*just two.*: 1\./],
  ['three of the triangle', jobTextWith('aim.barDistanceMm', 200), /^aim: .*just two.*: 3\./],
  ['two curves at once', jobTextWith('aim.edgeRadiusMm', 500), /^aim: .*just one way.*: 2\./],
  ['no aim', jobTextWith('aim', {}), /^aim: .*: 0\.\naim: .*: 0\.$/m],
  [
    'a curve tighter than the blade',
    jobTextWith('aim', { bevelAngleDeg: 25, projectionMm: 130, edgeRadiusMm: 20 }),
    /^aim\.edgeRadiusMm .*28\.5/,
  ],
  ['turns without an arm', jobTextWith('fixture.guideArmMm', null), /^fixture\.guideArmMm \(guide arm\): /],
]

const texts: readonly (readonly [string, string | Uint8Array, RegExp])[] = [
  ['broken off', '{"version": 1', /ends too early/],
  ['a comma too many', '{"version": 1,}', /line 1, character 15\./],
  ['other quotation marks', "{\n  'version': 1}", /line 2, character 3\./],
  ['a page of the web', '<html></html>', /line 1, character 1\./],
  ['100,000 opening brackets', '['.repeat(100_000), /line 1, character 65\./],
  ['100,000 opening braces', '{"a":'.repeat(100_000), /line 1, character 321\./],
  ['5,000 brackets, all closed', '['.repeat(5000) + ']'.repeat(5000), /entries in curly brackets/],
  ['a line within quotation marks', '{"version": "1\n"}', /inside the quotation marks/],
  ['empty', '', /nothing in this file/],
  ['blank', ' \n\t\n', /nothing in this file/],
  ['zeros', '\0\0\0', /line 1, character 1\./],
  ['a figure alone', '57', /entries in curly brackets/],
  ['a list', '[]', /entries in curly brackets/],
  ['null', 'null', /entries in curly brackets/],
  ['two marks of byte order', '\uFEFF\uFEFF{}', /line 1, character 1\./],
  ['of another encoding', new Uint8Array([0x7b, 0x22, 0xe4, 0x22, 0x7d]), /UTF-8/],
]

describe.each([
  ['a figure', figures],
  ['an entry', entries],
  ['figures together', between],
  ['a text', texts],
])('%s that cannot be', (_, cases) => {
  it.each(cases)('%s', async (_name, text, says) => {
    const startedMs = performance.now()
    expectRefused(await runCommand([place.write('job.json', text)]), says)
    expect(performance.now() - startedMs).toBeLessThan(QUICK_MS)
  })
})

it('has a line for each reason, and counts what would be too many lines', async () => {
  const three = { ...soundJob, colour: 1, grid: { across: -1, through: 'x' } }
  const { errors } = await runCommand([place.write('job.json', JSON.stringify(three))])
  expect(errors.trimEnd().split('\n').length).toBe(3)
  const hundred = await runCommand([place.write('job.json', JSON.stringify({ ...soundJob, ...many(100) }))])
  expect(hundred.errors.trimEnd().split('\n')).toHaveLength(21)
  expect(hundred.errors).toMatch(/\nAnd 80 more\.\n$/)
})
