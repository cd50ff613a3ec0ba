import { between, turned, type Vector } from '@ampwright/engine'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { addedUp, cornerSolid } from '../../../../tests/solids.ts'
import { byAxes, FILE_AXES, type FileAxis } from './axes.ts'
import { type Alignment, byPicks, type Pick } from './by-picks.ts'
import { inCar, inFile, mirrors, type Placement, placed } from './placement.ts'
import { FILE_UNITS, fileUnits, unitOfScale, unitsBySize } from './unit.ts'

// Doubles as drawn are mostly next to nothing: whole micrometres are spread evenly.
const at = fc.integer({ min: -1_000_000, max: 1_000_000 }).map(n => n / 1e6)
const place = fc.tuple(at, at, at)
/** A scan somewhere, turned somehow, in some unit, perhaps mirrored. */
const placement = fc
  .record({ scale: fc.constantFrom(...Object.values(FILE_UNITS)), turns: place, shift: place, mirrored: fc.boolean() })
  .map(({ scale, turns: [a, b, c], shift, mirrored }): Placement => {
    const [x, y, z] = turned(2, 3 * c, turned(1, 3 * b, turned(0, 3 * a)))
    return { scale, turn: [mirrored ? [-x[0], -x[1], -x[2]] : x, y, z], shift }
  })
const spread = fc.array(place, { minLength: 3, maxLength: 6 })
const aligned = (picks: readonly Pick[], options: Parameters<typeof byPicks>[1] = {}): Alignment => {
  const found = byPicks(picks, options)
  if ('problem' in found) throw new Error(JSON.stringify(found.problem))
  return found
}

describe('three points or more picked on a scan', () => {
  test('find unit, turn and place of the scan again', () => {
    fc.assert(
      fc.property(placement, spread, place, (wanted, places, probe) => {
        const picks = places.map(p => ({ inCar: p, onScan: inFile(wanted, p) })),
          found = byPicks(picks, { mirrored: mirrors(wanted) })
        if ('problem' in found) {
          expect(found.problem.what).toMatch(/on one line|too close together/)
          return
        }
        expect(FILE_UNITS[found.unit as 'mm']).toBe(wanted.scale)
        expect(found.residual).toBeLessThan(1e-9)
        expect(Math.abs(found.scaleOff)).toBeLessThan(1e-9)
        expect(between(inCar(found.placement, inFile(wanted, probe)), probe)).toBeLessThan(1e-6)
      }),
      { numRuns: runs(10_000) },
    )
  })
  const corners: readonly Vector[] = [
    [0, -0.5, 0.6],
    [0, 0.5, 0.6],
    [0.9, 0.1, 0.8],
  ]
  test('leave over what does not fit: one of them a centimetre off shares it out', () => {
    const off = corners.map((p, i) => ({ onScan: i === 0 ? ([p[0], p[1] + 0.01, p[2]] as const) : p, inCar: p })),
      found = aligned(off)
    expect(found.unit).toBe('m')
    expect(found.scaleOff).toBeGreaterThan(0)
    expect(Math.max(...found.residuals)).toBeLessThan(0.01)
    expect(found.residual).toBeGreaterThan(0.002)
  })
  test('no other turn fits better', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(place, place), { minLength: 4, maxLength: 6 }), fc.tuple(at, at, at), (pairs, [a, b, c]) => {
        const picks = pairs.map(([p, q]) => ({ onScan: p, inCar: [p[0] + q[0] / 5, p[1] + q[1] / 5, p[2] + q[2] / 5] as const })),
          found = byPicks(picks, { unit: 'm' })
        if ('problem' in found) return
        const { turn, shift } = found.placement,
          [x, y, z] = turned(2, c / 10, turned(1, b / 10, turned(0, a / 10))),
          other = turn.map((_, row) =>
            [0, 1, 2].map(i => x[row as 0] * turn[0][i as 0] + y[row as 0] * turn[1][i as 0] + z[row as 0] * turn[2][i as 0]),
          ) as unknown as Placement['turn']
        const squares = (p: Placement): number => picks.reduce((sum, k) => sum + between(inCar(p, k.onScan), k.inCar) ** 2, 0)
        expect(squares({ scale: 1, turn: other, shift })).toBeGreaterThanOrEqual(squares(found.placement) - 1e-12)
        expect(mirrors(found.placement)).toBe(false)
      }),
      { numRuns: runs(4000) },
    )
  })
  test('in a unit nobody knows give the scale itself, and say that there is none', () => {
    const found = aligned(corners.map(p => ({ inCar: p, onScan: [p[0] * 7, p[1] * 7, p[2] * 7] })))
    expect(found.unit).toBeUndefined()
    expect(found.placement.scale).toBeCloseTo(1 / 7, 12)
    expect(found.scaleOff).toBe(0)
  })
  test('in a unit that is said keep it, and tell how far the distances are off', () => {
    const found = aligned(
      corners.map(p => ({ inCar: p, onScan: [p[0] * 990, p[1] * 990, p[2] * 990] })),
      { unit: 'mm' },
    )
    expect(found.placement.scale).toBe(0.001)
    expect(found.scaleOff).toBeCloseTo(1 / 0.99 - 1, 9)
  })
  test('in another unit than was said are refused, naming the one they fit', () => {
    expect(
      byPicks(
        corners.map(p => ({ inCar: p, onScan: [p[0] / 0.0254, p[1] / 0.0254, p[2] / 0.0254] })),
        { unit: 'mm' },
      ),
    ).toEqual({
      problem: {
        what: 'the distances between the points do not fit a scan in mm',
        found: '25.4 times as long in the car, as if it were in in',
        accepted: 'within 10 %: another unit, none said, or other points',
      },
    })
  })
  test('are refused when they are too few, on one line, or one place', () => {
    const line = [0, 1, 2].map(x => ({ onScan: [x, 0.02 * (x % 2), 0], inCar: [x, 0, 0] }) as Pick)
    expect(byPicks(line.slice(1))).toEqual({
      problem: { what: 'too few points are picked', found: '2', accepted: 'three or more, not on one line' },
    })
    expect(byPicks(line)).toEqual({
      problem: {
        what: 'the points lie on one line on the scan, or nearly so: the scan could turn about it',
        found: '1 % of their length off it',
        accepted: 'at least 5 %: pick one well to the side',
      },
    })
    expect(byPicks(corners.map(p => ({ onScan: p, inCar: [p[0] / 20, p[1] / 20, p[2] / 20] })))).toMatchObject({
      problem: {
        what: 'the points lie too close together in the car',
        accepted: 'at least 100 mm: pick them as far apart as the scan goes',
      },
    })
    expect(byPicks(corners.map(p => ({ onScan: p, inCar: [1, 1, 1] })))).toMatchObject({ problem: { found: 'all at one place' } })
  })
})

describe('axes that are said', () => {
  test('turn the file’s up and rear to those of the car, right-handed unless mirrored', () => {
    for (const up of Object.keys(FILE_AXES) as FileAxis[])
      for (const rear of Object.keys(FILE_AXES) as FileAxis[]) {
        const found = byAxes({ scale: 0.001, up, rear })
        expect(found === undefined).toBe(up.at(-1) === rear.at(-1))
        if (!found) continue
        expect(inCar(found, FILE_AXES[up])).toEqual([0, 0, 0.001])
        expect(inCar(found, FILE_AXES[rear])).toEqual([0.001, 0, 0])
        expect(mirrors(found)).toBe(false)
        expect(mirrors(byAxes({ scale: 1, up, rear, mirrored: true }) as Placement)).toBe(true)
      }
  })
  test('y up and z rearwards put the file’s x to the right', () =>
    expect(inCar(byAxes({ scale: 1, up: 'y', rear: 'z' }) as Placement, [1, 2, 3])).toEqual([3, 1, 2]))
})

test('a mesh placed in the car keeps its volume, its outside and the way back', () => {
  fc.assert(
    fc.property(placement, place, (p, probe) => {
      const { mesh, volume } = cornerSolid(1, 2, 3)
      // A millimetre or so a metre away from the origin: of the sixteen digits of its places ten are left, and fewer of a volume.
      expect(addedUp(placed(mesh, p)).volume / p.scale ** 3).toBeCloseTo(volume, 4)
      expect(between(inFile(p, inCar(p, probe)), probe) * p.scale).toBeLessThan(1e-9)
    }),
    { numRuns: runs(2000) },
  )
})

test('the unit of a scan by its size, and by a distance on it', () => {
  const sized = (length: number) => unitsBySize({ low: [0, 0, 0], high: [length, length / 3, length / 2] })
  expect(sized(1300)).toEqual(['mm'])
  expect(sized(130)).toEqual(['cm', 'in'])
  expect(sized(48)).toEqual(['in', 'cm'])
  expect(sized(1.4)).toEqual(['m', 'ft'])
  expect(sized(1e6)).toEqual([])
  for (const unit of fileUnits) expect(unitOfScale(1.02 * FILE_UNITS[unit])).toBe(unit)
  expect(unitOfScale(0.005)).toBeUndefined()
})
