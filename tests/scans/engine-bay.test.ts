import { writeStl, readMesh } from '@ampwright/exchange'
import { boundsOf, byPicks, closedness, freeSpace, gapToBox, joined, measures, placed, prepare } from '@ampwright/geometry'
import { turned, type Vector } from '@ampwright/engine'
import { describe, expect, test } from 'vitest'
import { random } from '../../packages/engine/src/numerics/random.ts'
import { engineBay } from './engine-bay.ts'

const LONG = process.env['AMPWRIGHT_LONG'] === '1'

describe('an engine bay scanned with a phone', () => {
  const made = engineBay({ seed: 7, triangles: LONG ? 1_000_000 : 60_000 }),
    read = readMesh(writeStl(made.scan))
  if ('issue' in read) throw new Error(JSON.stringify(read.issue))
  const alignment = byPicks(made.picks)
  if ('problem' in alignment) throw new Error(JSON.stringify(alignment.problem))
  const mesh = placed(read.mesh, alignment.placement)

  test('is the same from the same seed, noisy and full of holes', () => {
    const [one, again, other] = [3, 3, 4].map(seed => engineBay({ seed, triangles: 5000 }).scan) as [
      typeof made.scan,
      typeof made.scan,
      typeof made.scan,
    ]
    expect(again).toEqual(one)
    expect(other.positions).not.toEqual(one.positions)
    const edges = closedness(read.mesh)
    expect(edges.closed).toBe(false)
    expect(edges.openEdges).toBeGreaterThan(100)
    expect(edges.oddEdges).toBe(0)
    expect('volume' in measures(read.mesh)).toBe(false)
  })
  test('has about as many triangles as were wanted, whose corners come together again', () => {
    const wanted = LONG ? 1_000_000 : 60_000
    expect(Math.abs(read.mesh.triangles.length / 3 / wanted - 1)).toBeLessThan(0.1)
    expect(joined(read.mesh).positions.length).toBeLessThan(read.mesh.positions.length / 4)
  })
  test('is laid into the car by four points, within their reading', () => {
    expect(alignment.unit).toBe('mm')
    expect(alignment.residual).toBeLessThan(0.003)
    expect(Math.abs(alignment.scaleOff)).toBeLessThan(0.01)
    const { low, high } = boundsOf(mesh)
    for (const axis of [0, 1, 2] as const) {
      expect(low[axis]).toBeGreaterThan(made.within.low[axis] - 0.02)
      expect(high[axis]).toBeLessThan(made.within.high[axis] + 0.06)
    }
  })
  test('leaves the space free that was left when it was made, less a layer under its skin', () => {
    const edge = 0.02,
      found = freeSpace(mesh, { from: made.inside, edge, within: made.within })
    if ('problem' in found) throw new Error(JSON.stringify(found.problem))
    const { field, reached, volume } = found,
      [nx, ny] = field.counts
    let [open, deep, wrong, missed] = [0, 0, 0, 0]
    for (const [at, free] of field.free.entries()) {
      const [i, j, k] = [at % nx, Math.floor(at / nx) % ny, Math.floor(at / nx / ny)],
        d = made.skin(field.low[0] + (i + 0.5) * edge, field.low[1] + (j + 0.5) * edge, field.low[2] + (k + 0.5) * edge)
      if (d > 0) open++
      // No cube whose middle is well inside the metal is free, and each one well in the open is.
      if (free && d < -0.005) wrong++
      if (d > edge) deep++
      if (!free && d > 1.2 * edge) missed++
    }
    expect(wrong).toBe(0)
    expect(missed).toBeLessThan(0.001 * open)
    expect(volume).toBeGreaterThan(0.95 * deep * edge ** 3)
    expect(volume).toBeLessThan(open * edge ** 3)
    expect(reached.top).toBeGreaterThan(0.5)
    expect(reached.bottom + reached.front + reached.left + reached.right).toBe(0)
  })
  test('keeps boxes as far off as the skin it was made from', () => {
    const tree = prepare(mesh),
      chance = random(11)
    for (let n = 0; n < 20; n++) {
      const centre: Vector = [0.3 * chance.normal(), 0.2 * chance.normal(), 0.55 + 0.08 * chance.normal()],
        d = made.skin(...centre)
      if (d < 0.05) continue
      // A small cube about a place: its gap is the distance of the place less what the cube takes, between half its side and half its diagonal.
      const gap = gapToBox(tree, { centre, half: [0.01, 0.01, 0.01], axes: turned(0, chance.uniform()) })?.gap as number
      expect(gap).toBeGreaterThan(d - 0.0174 - 0.01)
      expect(gap).toBeLessThan(d - 0.01 + 0.03)
    }
  })
})
