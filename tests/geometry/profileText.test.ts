import { describe, expect, it } from 'vitest'
import { MOST_KEPT, type ProfileTaking, readProfileText } from '../../geometry/profileText.ts'
import { found } from './example.ts'

const plain: ProfileTaking = { placeUnitMm: 1, heightUnitMm: 1, from: 'middle', of: 'gaps' }
const read = (text: string, taking: Partial<ProfileTaking> = {}) => readProfileText(text, { ...plain, ...taking }, 57)
const pointsOf = (text: string, taking: Partial<ProfileTaking> = {}) =>
  found(read(text, taking)).points.map(({ uMm, gapMm }) => [uMm, gapMm])
const refusal = (text: string, taking: Partial<ProfileTaking> = {}) => {
  const answer = read(text, taking)
  return answer.ok ? null : [answer.problems[0]?.code, answer.problems[0]?.params.line]
}

describe('a profile from two columns', () => {
  it.each([
    ['points and commas between', '-20,0.25\n0,0\n20,0.24'],
    ['decimal commas, semicolons between', 'u; gap\r\n-20,0;0,25\r\n0;0\r\n20;0,24'],
    ['tabs, a remark, an empty line', '# left first\n-20\t0.25\n\n0\t0\n20\t0,24'],
    ['spaces', '-20 0.25\n 0  0\n20 0,24\n'],
    ['spaces, decimal commas in one column', '-20 0,25\n0 0,0\n20 0,24'],
    ['commas between, a header of two words', 'place, gap\n-20,25e-2\n0,0\n20,24e-2'],
    ['units in the header', 'mm,mm\n-20,25e-2\n0,0\n20,24e-2'],
    ['out of order', '20;.24\n-20;.25\n0;0'],
  ])('%s', (_, text) => {
    expect(pointsOf(text)).toEqual([
      [-20, 0.25],
      [0, 0],
      [20, 0.24],
    ])
  })

  it('counted from the left corner, 8.5 lies 20 mm left of the middle of 57; thousandths of an inch are 0.0254 mm', () => {
    expect(pointsOf('8.5;10\n28.5;0\n48.5;10', { from: 'leftCorner', heightUnitMm: 0.0254 })).toEqual([
      [-20, 0.254],
      [0, 0],
      [20, 0.254],
    ])
  })

  it('heights become gaps under the highest', () => {
    expect(pointsOf('-20;3.1\n0;3.5\n20;3', { of: 'heights' }).map(([, gap]) => gap?.toFixed(6))).toEqual([
      '0.400000',
      '0.000000',
      '0.500000',
    ])
  })

  it.each([
    ['a figure and its thousands', '1,5,0,2\n2,5,0,1\n3,5,0', ['profileSeparator', undefined]],
    ['a gap in the second column', '-20;0.2\n0;\n20;0.2', ['profileFigure', 2]],
    ['not a number', '-20;0.2\n0;NaN\n20;0.2', ['profileFigure', 2]],
    ['three columns', '-20;0.2;9\n0;0;9\n20;0.2;9', ['profileCells', 1]],
    ['one column', '1\n2\n3', ['profileSeparator', undefined]],
    ['one column with decimal commas', '12,5\n3,2\n-4,1', ['profileSeparator', undefined]],
    ['one column with decimal commas under its name', 'gap, mm\n12,5\n3,2\n4,1', ['profileSeparator', undefined]],
    ['one column with thousands parted by points', '1.234,5\n1.100,2\n1.004,1', ['profileSeparator', undefined]],
    ['one column with thousands parted by spaces', '1 234,5\n1 100,2\n1 004,1', ['profileSeparator', undefined]],
    ['a figure beyond all reckoning', '-20;0.2\n0;1e400\n20;0.2', ['profileFigure', 2]],
    ['the same in the first row', '1e400;1e400\n-20;0.2\n0;0\n20;0.2', ['profileFigure', 1]],
    ['a first row of missing figures', 'NaN;NaN\n-20;0.2\n0;0\n20;0.2', ['profileFigure', 1]],
    ['a first row with units at its figures', '-20mm;0.2mm\n0;0\n5;0\n20;0.2', ['profileFigure', 1]],
    ['a first row of dashes', '-;-\n-20;0.2\n0;0\n20;0.2', ['profileFigure', 1]],
    ['a gap less than none', '-20;0.2\n0;-0.01\n20;0.2', ['profileNegative', 2]],
    ['gaps deeper than any edge has', '-20;13\n0;0\n20;13', ['profileTooDeep', undefined]],
    ['all rows at one place', '5;0\n5;0.1\n5;0.2', ['placesTooFew', undefined]],
    ['two places', '5;0\n5.01;0.1\n20;0.2\n20.02;0.2', ['placesTooFew', undefined]],
    ['two rows', '1;2\n2;3', ['profileTooFew', undefined]],
    ['nothing', '', ['profileTooFew', undefined]],
    ['a place off the iron', '-40;0\n0;0\n20;0', ['profileBeyond', undefined]],
    ['grouped figures', '-20;1.000,5\n0;0\n20;0.2', ['profileFigure', 1]],
  ])('refuses %s', (_, text, refused) => {
    expect(refusal(text)).toEqual(refused)
  })

  const noticesOf = (text: string, taking: Partial<ProfileTaking> = {}) => found(read(text, taking)).notices

  it('negative heights are heights, and out of order is said; right to left is an order', () => {
    expect(noticesOf('20;-0.4\n0;0\n-20;-0.5', { of: 'heights' })).toEqual([])
    expect(noticesOf('0;0\n-20;0.2\n20;0.2')).toEqual([{ code: 'profileSorted', params: {} }])
  })

  it('places that stand twice are said: 0 and 0 in two rows of five', () => {
    expect(noticesOf('-20;0.2\n0;0\n0;0.02\n10;0.1\n20;0.2')).toEqual([
      { code: 'placesAgain', params: { again: 1, points: 5 } },
    ])
  })

  it('takes neighbours of too many rows together, and says so', () => {
    const rows = Array.from({ length: 40_100 }, (_, k) => `${(k / 40_099 - 0.5) * 56};${(k / 40_099 - 0.5) ** 2}`)
    const taken = found(read(rows.join('\n')))
    expect([taken.points.length, taken.rows]).toEqual([MOST_KEPT, 40_100])
    expect(taken.notices).toEqual([{ code: 'profileThinned', params: { rows: 40_100, kept: MOST_KEPT } }])
    const middle = taken.points[200]
    expect(middle?.gapMm).toBeCloseTo(((middle?.uMm ?? 9) / 56) ** 2, 5)
  })
})
