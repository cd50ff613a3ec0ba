import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { centreInAnyOrder, rightFrontWheel, rightRearWheel } from './corner-masses.ts'

const thing = fc.record({
  m: fc.double({ min: 1, max: 150, noNaN: true }),
  x: fc.double({ min: -0.8, max: 3.2, noNaN: true }),
  y: fc.double({ min: -0.7, max: 0.7, noNaN: true }),
})
const things = fc.array(thing, { maxLength: 6 })
const L = 2.4,
  T = 1.4

describe('wheels by ledger', () => {
  it('right and mirrored right wheels together gain what goes in', () =>
    fc.assert(
      fc.property(things, things, (ins, outs) => {
        const wheels = (sign: 1 | -1) => {
          const c = {
            before: 250,
            added: ins.map(i => i.m),
            addedX: ins.map(i => i.x),
            addedY: ins.map(i => sign * i.y),
            removed: outs.map(o => o.m),
            removedX: outs.map(o => o.x),
            removedY: outs.map(o => sign * o.y),
            wheelbase: L,
            track: T,
          }
          return rightFrontWheel(c) + rightRearWheel(c)
        }
        const gained = ins.reduce((s, i) => s + i.m, 0) - outs.reduce((s, o) => s + o.m, 0)
        expect(wheels(1) + wheels(-1)).toBeCloseTo(1000 + gained, 6)
      }),
      { numRuns: runs(2000) },
    ))
})
describe('the centre of mass in any order', () => {
  it('is that of the worst of all states there are, tried one by one', () =>
    fc.assert(
      fc.property(fc.array(thing, { maxLength: 5 }), fc.array(thing, { maxLength: 5 }), (ins, outs) => {
        const front = 1200,
          rear = 1100
        const got = centreInAnyOrder({
          front,
          rear,
          wheelbase: L,
          added: ins.map(i => i.m),
          addedX: ins.map(i => i.x),
          removed: outs.map(o => o.m),
          removedX: outs.map(o => o.x),
        })
        let least = Infinity,
          most = -Infinity
        for (let n = 0; n < 2 ** (ins.length + outs.length); n++) {
          let m = front + rear,
            moment = rear * L
          for (const [k, t] of [...ins, ...outs].entries())
            if (n & (1 << k)) {
              const sign = k < ins.length ? 1 : -1
              m += sign * t.m
              moment += sign * t.m * t.x
            }
          least = Math.min(least, moment / m)
          most = Math.max(most, moment / m)
        }
        expect(got.foremost).toBeCloseTo(least, 9)
        expect(got.rearmost).toBeCloseTo(most, 9)
      }),
      { numRuns: runs(1000) },
    ))
})
