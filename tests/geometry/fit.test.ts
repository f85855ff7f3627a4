import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { curveFit } from '../../geometry/curveFit.ts'
import { linearFit } from '../../geometry/fit.ts'
import { found } from './example.ts'

/** A set of NIST's: y, then predictors. */
const setOf = (name: string): readonly number[][] =>
  readFileSync(join(import.meta.dirname, '..', 'data', `${name}.csv`), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(',').map(Number))

/** Digits of agreement, -log10 of the relative difference, at most 15. */
const digits = (got: number, certified: number): number =>
  got === certified ? 15 : Math.min(15, -Math.log10(Math.abs((got - certified) / certified)))

const leastDigits = (got: readonly number[], certified: readonly number[]): number =>
  Math.min(...certified.map((value, i) => digits(got[i] as number, value)))

describe('linear least squares: digits on NIST StRD', () => {
  it.each([
    {
      name: 'norris',
      row: (x: readonly number[]) => [1, x[0] as number],
      values: [-0.262323073774029, 1.00211681802045],
      errors: [0.232818234301152, 0.429796848199937e-3],
      sd: 0.884796396144373,
      least: 11.5,
    },
    {
      name: 'pontius',
      row: (x: readonly number[]) => [1, x[0] as number, (x[0] as number) ** 2],
      values: [0.673565789473684e-3, 0.732059160401003e-6, -0.316081871345029e-14],
      errors: null,
      sd: 0.205177424076185e-3,
      least: 10.5,
    },
    {
      name: 'longley',
      row: (x: readonly number[]) => [1, ...x],
      values: [
        -3482258.63459582, 15.0618722713733, -0.035819179292591, -2.02022980381683, -1.03322686717359,
        -0.0511041056535807, 1829.15146461355,
      ],
      errors: null,
      sd: 304.854073561965,
      least: 10.5,
    },
  ])('$name', ({ name, row, values, errors, sd, least }) => {
    const data = setOf(name)
    const fit = found(
      linearFit(
        data.map(([, ...x]) => row(x)),
        data.map(([y]) => y as number),
      ),
    )
    const got = leastDigits(fit.values, values)
    expect(got).toBeGreaterThan(least)
    expect(digits(fit.residualSd as number, sd)).toBeGreaterThan(least)
    if (errors !== null) expect(leastDigits(fit.standardErrors as number[], errors)).toBeGreaterThan(least)
  })

  it('columns that hang together, and fewer points than values, are refused', () => {
    for (const rows of [
      [
        [1, 2],
        [2, 4],
        [3, 6],
      ],
      [[1, 2]],
    ]) {
      const fit = linearFit(
        rows,
        rows.map(() => 1),
      )
      expect(fit.ok ? null : fit.problems[0]?.code).toBe('fitSingular')
    }
  })
})

const misra = ([a, b]: readonly number[], x: number) => (a as number) * (1 - Math.exp(-(b as number) * x))
const thurber = (b: readonly number[], x: number) => {
  const [b1, b2, b3, b4, b5, b6, b7] = b as [number, number, number, number, number, number, number]
  return (b1 + b2 * x + b3 * x * x + b4 * x ** 3) / (1 + b5 * x + b6 * x * x + b7 * x ** 3)
}

describe('curves: digits on NIST StRD, from both starts', () => {
  const misraValues = [238.94212918, 5.5015643181e-4]
  const thurberValues = [
    1288.13968, 1491.0792535, 583.23836877, 75.416644291, 0.96629502864, 0.39797285797, 0.049727297349,
  ]
  it.each([
    { name: 'misra1a', curve: misra, start: [500, 1e-4], values: misraValues, sd: 0.1018787633 },
    { name: 'misra1a', curve: misra, start: [250, 5e-4], values: misraValues, sd: 0.1018787633 },
    {
      name: 'thurber',
      curve: thurber,
      start: [1000, 1000, 400, 40, 0.7, 0.3, 0.03],
      values: thurberValues,
      sd: 13.714600784,
    },
    {
      name: 'thurber',
      curve: thurber,
      start: [1300, 1500, 500, 75, 1, 0.4, 0.05],
      values: thurberValues,
      sd: 13.714600784,
    },
  ])('$name from $start', ({ name, curve, start, values, sd }) => {
    const data = setOf(name)
    const fit = found(
      curveFit(
        curve,
        data.map((d) => d[1] as number),
        data.map((d) => d[0] as number),
        start,
      ),
    )
    const got = leastDigits(fit.values, values)
    expect(got).toBeGreaterThan(6)
    expect(digits(fit.residualSd as number, sd)).toBeGreaterThan(9)
    if (name === 'misra1a')
      expect(leastDigits(fit.standardErrors as number[], [2.7070075241, 7.2668688436e-6])).toBeGreaterThan(5)
  })
})
