import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type LeastSquares, leastSquares } from './least-squares.ts'
import { solveLinear } from './linear.ts'

const deviations = (fit: LeastSquares): number[] => {
  const n = fit.coefficients.length
  return Array.from({ length: n }, (_, i) => Math.sqrt(fit.covariance![i * n + i]!))
}

/** Digits in which a result agrees with a certified value. */
const digits = (found: number, certified: number): number => -Math.log10(Math.max(1e-16, Math.abs(found / certified - 1)))

describe('least squares on certified data', () => {
  test('fit the calibration line of the Norris data to eleven digits', () => {
    // NIST Statistical Reference Datasets, linear regression, Norris: y, x; certified values.
    const data = [
      0.1, 0.2, 338.8, 337.4, 118.1, 118.2, 888.0, 884.6, 9.2, 10.1, 228.1, 226.5, 668.5, 666.3, 998.5, 996.3, 449.1, 448.6, 778.9, 777.0,
      559.2, 558.2, 0.3, 0.4, 0.1, 0.6, 778.1, 775.5, 668.8, 666.9, 339.3, 338.0, 448.9, 447.5, 10.8, 11.6, 557.7, 556.0, 228.3, 228.1,
      998.0, 995.8, 888.8, 887.6, 119.6, 120.2, 0.3, 0.3, 0.6, 0.3, 557.6, 556.8, 339.3, 339.1, 888.0, 887.2, 998.5, 999.0, 778.9, 779.0,
      10.2, 11.1, 117.6, 118.3, 228.9, 229.2, 668.4, 669.1, 449.2, 448.9, 0.2, 0.5,
    ]
    const y = data.filter((_, i) => i % 2 === 0)
    const fit = leastSquares(
      data.map((v, i) => (i % 2 === 0 ? 1 : v)),
      y,
    )!
    expect(fit.degrees).toBe(34)
    expect(digits(fit.coefficients[0]!, -0.262323073774029)).toBeGreaterThan(11)
    expect(digits(fit.coefficients[1]!, 1.00211681802045)).toBeGreaterThan(11)
    expect(digits(deviations(fit)[0]!, 0.232818234301152)).toBeGreaterThan(11)
    expect(digits(deviations(fit)[1]!, 0.429796848199937e-3)).toBeGreaterThan(11)
    expect(digits(fit.deviation!, 0.884796396144373)).toBeGreaterThan(11)
    expect(digits(fit.sumOfSquares, 26.6173985294224)).toBeGreaterThan(11)
  })

  test('fit the nearly dependent columns of the Longley data to eight digits', () => {
    // NIST Statistical Reference Datasets, linear regression, Longley: y, x₁ … x₆; certified values.
    const rows = [
      [60323, 83.0, 234289, 2356, 1590, 107608, 1947],
      [61122, 88.5, 259426, 2325, 1456, 108632, 1948],
      [60171, 88.2, 258054, 3682, 1616, 109773, 1949],
      [61187, 89.5, 284599, 3351, 1650, 110929, 1950],
      [63221, 96.2, 328975, 2099, 3099, 112075, 1951],
      [63639, 98.1, 346999, 1932, 3594, 113270, 1952],
      [64989, 99.0, 365385, 1870, 3547, 115094, 1953],
      [63761, 100.0, 363112, 3578, 3350, 116219, 1954],
      [66019, 101.2, 397469, 2904, 3048, 117388, 1955],
      [67857, 104.6, 419180, 2822, 2857, 118734, 1956],
      [68169, 108.4, 442769, 2936, 2798, 120445, 1957],
      [66513, 110.8, 444546, 4681, 2637, 121950, 1958],
      [68655, 112.6, 482704, 3813, 2552, 123366, 1959],
      [69564, 114.2, 502601, 3931, 2514, 125368, 1960],
      [69331, 115.7, 518173, 4806, 2572, 127852, 1961],
      [70551, 116.9, 554894, 4007, 2827, 130081, 1962],
    ]
    const certified = [
      [-3482258.63459582, 890420.383607373],
      [15.0618722713733, 84.9149257747669],
      [-0.035819179292591, 0.0334910077722432],
      [-2.02022980381683, 0.488399681651699],
      [-1.03322686717359, 0.214274163161675],
      [-0.0511041056535807, 0.22607320006937],
      [1829.15146461355, 455.478499142212],
    ] as const
    const fit = leastSquares(
      rows.flatMap(r => [1, ...r.slice(1)]),
      rows.map(r => r[0]!),
    )!
    for (const [i, [coefficient, deviation]] of certified.entries()) {
      expect(digits(fit.coefficients[i]!, coefficient)).toBeGreaterThan(8)
      expect(digits(deviations(fit)[i]!, deviation)).toBeGreaterThan(8)
    }
    expect(digits(fit.deviation!, 304.854073561965)).toBeGreaterThan(8)
  })
})

describe('a weighted fit', () => {
  const row = fc.record({
    x: fc.integer({ min: -20, max: 20 }),
    y: fc.integer({ min: -50, max: 50 }),
    weight: fc.integer({ min: 1, max: 9 }),
  })
  const rows = fc.array(row, { minLength: 5, maxLength: 30 }).filter(r => new Set(r.map(o => o.x)).size > 2)

  test('equals the normal equations', () => {
    fc.assert(
      fc.property(rows, r => {
        const a = r.flatMap(o => [1, o.x])
        const fit = leastSquares(
          a,
          r.map(o => o.y),
          r.map(o => o.weight),
        )!
        const s = (f: (o: { x: number; y: number }) => number): number => r.reduce((sum, o) => sum + o.weight * f(o), 0)
        const square = [s(() => 1), s(o => o.x), s(o => o.x), s(o => o.x * o.x)]
        const normal = solveLinear(square, [s(o => o.y), s(o => o.x * o.y)])!
        const inverse = [...solveLinear(square, [1, 0])!, ...solveLinear(square, [0, 1])!]
        for (let i = 0; i < 2; i++) expect(fit.coefficients[i]).toBeCloseTo(normal[i]!, 8)
        for (let i = 0; i < 4; i++) expect(fit.inverse[i]).toBeCloseTo(inverse[i]!, 9)
      }),
    )
  })

  test('counts an observation of weight k like k observations', () => {
    fc.assert(
      fc.property(rows, r => {
        const weighted = leastSquares(
          r.flatMap(o => [1, o.x]),
          r.map(o => o.y),
          r.map(o => o.weight),
        )!
        const many = r.flatMap(o => Array.from({ length: o.weight }, () => o))
        const repeated = leastSquares(
          many.flatMap(o => [1, o.x]),
          many.map(o => o.y),
        )!
        for (let i = 0; i < 2; i++) expect(weighted.coefficients[i]).toBeCloseTo(repeated.coefficients[i]!, 9)
        expect(weighted.sumOfSquares).toBeCloseTo(repeated.sumOfSquares, 6)
      }),
    )
  })

  test('leaves out an observation of weight zero altogether', () => {
    const fit = leastSquares([1, 0, 1, 1, 1, 2, 1, 3], [0, 1, 2, 99], [1, 1, 1, 0])!
    expect(fit.coefficients[1]).toBeCloseTo(1, 14)
    expect(fit.degrees).toBe(1)
    expect(fit.residuals[3]).toBeCloseTo(96, 12)
  })

  test('has residuals that no column can still explain', () => {
    fc.assert(
      fc.property(rows, r => {
        const fit = leastSquares(
          r.flatMap(o => [1, o.x, o.x * o.x]),
          r.map(o => o.y),
          r.map(o => o.weight),
        )
        if (!fit) return
        for (const power of [0, 1, 2])
          expect(r.reduce((sum, o, i) => sum + o.weight * fit.residuals[i]! * o.x ** power, 0)).toBeCloseTo(0, 5)
      }),
    )
  })
})

describe('no fit', () => {
  test('when columns depend on one another, one is empty, or observations are too few', () => {
    expect(leastSquares([1, 2, 2, 4, 3, 6], [1, 2, 3])).toBeUndefined()
    expect(leastSquares([1, 0, 2, 0, 3, 0], [1, 2, 3])).toBeUndefined()
    expect(leastSquares([1, 2, 3], [1])).toBeUndefined()
    expect(leastSquares([1, 0, 1, 1], [1, 2], [1, 0])).toBeUndefined()
  })

  test('has no scatter when nothing is left over', () => {
    const fit = leastSquares([1, 0, 1, 1], [1, 3])!
    expect([...fit.coefficients]).toEqual([expect.closeTo(1, 14), expect.closeTo(2, 14)])
    expect(fit.deviation).toBeUndefined()
    expect(fit.covariance).toBeUndefined()
    expect(fit.inverse[0]).toBeCloseTo(1, 14)
  })

  test('depends on no unit: a column a billion times smaller only makes its coefficient larger', () => {
    const [a, b] = [leastSquares([1, 1, 1, 2, 1, 4], [1, 2, 3])!, leastSquares([1, 1e-12, 1, 2e-12, 1, 4e-12], [1, 2, 3])!]
    expect(b.coefficients[1]! * 1e-12).toBeCloseTo(a.coefficients[1]!, 12)
  })

  test('of senseless shapes', () => {
    expect(() => leastSquares([1, 2, 3], [1, 2])).toThrow(
      RangeError('leastSquares: a must have a whole number of columns for 2 rows, found 3 values'),
    )
    expect(() => leastSquares([], [])).toThrow(/whole number of columns/)
    expect(() => leastSquares([1, 2], [1, 2], [1])).toThrow(
      RangeError('leastSquares: weights must be as many as observations (2), found 1'),
    )
    expect(() => leastSquares([1, 2], [1, 2], [1, -1])).toThrow(
      RangeError('leastSquares: weights[1] must be zero or more and finite, found -1'),
    )
  })
})
