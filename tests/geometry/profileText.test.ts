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
    ['two rows', '1;2\n2;3', ['profileTooFew', undefined]],
    ['nothing', '', ['profileTooFew', undefined]],
    ['a place off the iron', '-40;0\n0;0\n20;0', ['profileBeyond', undefined]],
    ['grouped figures', '-20;1.000,5\n0;0\n20;0.2', ['profileFigure', 1]],
  ])('refuses %s', (_, text, refused) => {
    expect(refusal(text)).toEqual(refused)
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
