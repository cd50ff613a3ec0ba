import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../../tests/counts.ts'
import type { AlignedBox } from '../box.ts'
import type { Vector } from '../vector.ts'
import { freeRooms } from './free-rooms.ts'
import { modulesAllOneWay } from './modules-all-one-way.ts'
import type { BoxBuild } from './pack-types.ts'

const cuboid = (low: Vector, size: Vector): AlignedBox => ({ low, high: low.map((c, i) => c + (size[i] as number)) as unknown as Vector })
const volume = ({ low, high }: AlignedBox): number => low.reduce((v, c, i) => v * ((high[i] as number) - c), 1)
const apart = (a: AlignedBox, b: AlignedBox): number =>
  Math.max(...a.low.map((c, i) => Math.max(c - (b.high[i] as number), (b.low[i] as number) - (a.high[i] as number))))
const SPACE = cuboid([0, 0, 0], [10, 8, 6])
const somewhere = fc
  .tuple(
    fc.tuple(fc.nat(9), fc.nat(7), fc.nat(5)),
    fc.tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 })),
  )
  .map(([low, size]) => cuboid(low as Vector, size as Vector))

/** The largest empty cuboid on whole numbers, by trying every one. */
function largest(taken: readonly AlignedBox[]): number {
  let best = 0
  const ends = (n: number): readonly (readonly [number, number])[] =>
    Array.from({ length: n }, (_, a) => Array.from({ length: n - a }, (_, k) => [a, a + k + 1] as const)).flat()
  for (const [x1, x2] of ends(10))
    for (const [y1, y2] of ends(8)) {
      const open = taken.filter(t => t.low[0] < x2 && x1 < t.high[0] && t.low[1] < y2 && y1 < t.high[1])
      for (const [z1, z2] of ends(6)) {
        const size = (x2 - x1) * (y2 - y1) * (z2 - z1)
        if (size > best && !open.some(t => t.low[2] < z2 && z1 < t.high[2])) best = size
      }
    }
  return best
}

describe('free rooms of a space', () => {
  it('stand inside it, clear of what is in it and of each other, the first the largest there is', () => {
    fc.assert(
      fc.property(fc.array(somewhere, { maxLength: 5 }), taken => {
        const rooms = freeRooms(SPACE, taken, { worth: volume, most: 3, apart: 0.5 })
        expect(rooms[0] ? volume(rooms[0]) : 0).toBeCloseTo(largest(taken), 9)
        rooms.forEach((room, i) => {
          expect(room.low.every((c, k) => c >= (SPACE.low[k] as number)) && room.high.every((c, k) => c <= (SPACE.high[k] as number))).toBe(
            true,
          )
          for (const t of taken) expect(apart(room, t)).toBeGreaterThanOrEqual(-1e-9)
          for (const other of rooms.slice(0, i)) expect(apart(room, other)).toBeGreaterThanOrEqual(0.5 - 1e-9)
        })
      }),
      { numRuns: runs(400) },
    )
  })
  it('are none where nothing is free, or nothing is worth anything', () => {
    expect(freeRooms(SPACE, [SPACE], { worth: volume, most: 2, apart: 0 })).toEqual([])
    expect(freeRooms(SPACE, [], { worth: () => 0, most: 2, apart: 0 })).toEqual([])
    expect(freeRooms(cuboid([0, 0, 0], [1, -1, 1]), [], { worth: volume, most: 1, apart: 0 })).toEqual([])
  })
})

describe('modules all one way round', () => {
  const box: BoxBuild = { wall: 0.003, plate: 0.01, lid: 0.02, busbar: 0, sheet: 8 },
    module = { size: [0.3, 0.15, 0.1] as Vector, clearance: 0.002, down: ['bottom'] as const }
  it('are counted with walls, plate, lid and gaps, worked by hand', () => {
    // Inside 0.606 × 0.308 × 0.21 m: two along, two across, two high take 0.602 × 0.302 × 0.202 m.
    const room = cuboid([1, 0, 0.2], [0.612, 0.314, 0.246])
    expect(modulesAllOneWay(room, module, box)).toBe(8)
    expect(modulesAllOneWay(room, module, { ...box, lid: 0.03 })).toBe(4)
    // Room before the top of each: one layer.
    expect(modulesAllOneWay(room, { ...module, service: { face: 'top', strip: 0.03 } }, box)).toBe(4)
    expect(modulesAllOneWay(cuboid([0, 0, 0], [0.2, 0.2, 0.2]), module, box)).toBe(0)
  })
})
