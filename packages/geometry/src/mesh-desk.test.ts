import { type OrientedBox, SQUARE } from '@ampwright/engine'
import { describe, expect, test } from 'vitest'
import { ballSolid, boxSolid } from '../../../tests/solids.ts'
import { gapBetween, gapToBox } from './gap.ts'
import { MeshDesk } from './mesh-desk.ts'
import { prepare } from './prepare.ts'

const box: OrientedBox = { centre: [2, 0, 0], half: [0.5, 0.5, 0.5], axes: SQUARE }

describe('meshes kept for a worker', () => {
  const desk = new MeshDesk(),
    ball = ballSolid(1, 3).mesh,
    part = boxSolid([0.2, 0.2, 0.2]).mesh
  test('answer as they do by themselves, in plain data', () => {
    expect(desk.put('ball', ball)).toMatchObject({ closed: true, triangles: 512 })
    desk.put('part', part, { solid: true })
    const pose = { centre: [1.5, 0, 0], axes: SQUARE } as const
    const answers = [
      desk.gapToBox('ball', box),
      desk.gapBetween('ball', 'part', { pose }),
      desk.gapToTube('ball', { points: [[0, 0, 3]], radius: 0.1 }),
      desk.tightestOnWay(
        'ball',
        [0.1, 0.1, 0.1],
        [
          { centre: [-2, 2, 0], axes: SQUARE },
          { centre: [2, 2, 0], axes: SQUARE },
        ],
      ),
      desk.firstHit('ball', [0, 0, 5], [0, 0, -1]),
      desk.section('ball', { normal: [0, 0, 1], at: 0.1 }),
      desk.freeSpace('ball', { from: [0, 0, 0], edge: 0.1, within: { low: [-1.2, -1.2, -1.2], high: [1.2, 1.2, 1.2] } }),
    ]
    expect(structuredClone(answers)).toEqual(answers)
    expect(answers[0]).toEqual(gapToBox(prepare(ball), box))
    expect(answers[1]).toEqual(gapBetween(prepare(ball), prepare(part, { solid: true }), { pose }))
    expect((answers[3] as { gap: { gap: number } }).gap.gap).toBeCloseTo(0.9, 2)
  })
  test('give an answer again without working it out, until the mesh goes', () => {
    expect(desk.gapToBox('ball', { ...box })).toBe(desk.gapToBox('ball', box))
    expect(desk.gapToBox('ball', box, { upTo: 0.1 })).toBeUndefined()
    expect(desk.gapToBox('ball', { ...box, centre: [3, 0, 0] })?.gap).toBeCloseTo(1.5, 9)
    desk.drop('ball')
    expect(() => desk.gapToBox('ball', box)).toThrow('no mesh is kept as ball; there are part')
    desk.put('ball', boxSolid([1, 1, 1]).mesh)
    expect(desk.gapToBox('ball', box)?.gap).toBeCloseTo(0.5, 12)
  })
})
