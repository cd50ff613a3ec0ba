import { boxPlan } from '@ampwright/drawing'
import { describe, expect, it } from 'vitest'
import { planDxf } from './plan-dxf.ts'

const box = { length: 0.31, width: 0.38, height: 0.345, wall: 0.003 }

describe('a battery box for a drawing program', () => {
  const plan = boxPlan(box, 0.1, 0.05)
  it('has its outer sides at full length in millimetres, in three views', () => {
    const lines = planDxf('Battery box front', plan).split('\r\n'),
      outlines = lines.flatMap((value, i) => (value === 'OUTLINE' && lines[i - 1]?.trim() === '8' && lines[i - 2] === 'LINE' ? [i] : []))
    const lengths = outlines.map(i => {
      const at = (code: number): number =>
        Number(lines[lines.findIndex((v, k) => k > i && v.trim() === String(code) && (k - i) % 2 === 1) + 1])
      return Math.round(Math.hypot(at(11) - at(10), at(21) - at(20)))
    })
    expect(lengths).toHaveLength(12)
    for (const [side, times] of [
      [310, 4],
      [380, 4],
      [345, 4],
    ] as const)
      expect(lengths.filter(l => l === side)).toHaveLength(times)
  })
  it('writes each size as it is', () => {
    const text = planDxf('Battery box front', plan)
    for (const size of ['310', '380', '345']) expect(text).toMatch(new RegExp(` 1\\r\\n${size}\\r\\n`))
    expect(text).toContain('Battery box front, outer sizes in mm')
  })
  it('marks each point it is fixed at in all three views, on a layer of its own', () => {
    const points = [
        { back: 0.03, across: -0.015, up: 0 },
        { back: 0.28, across: 0.395, up: 0 },
      ],
      fixed = boxPlan({ ...box, points }, 0.1, 0.05),
      crosses = fixed.lines.filter(l => l.is === 'fixing')
    expect(crosses).toHaveLength(2 * 3 * points.length)
    // From above it stands where it was measured: back along the sheet, across up it.
    const middles = crosses.map(({ from, to }) => [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2])
    for (const { back, across } of points)
      expect(middles.filter(([u, v]) => Math.hypot((u ?? 9) - back, (v ?? 9) - across) < 1e-12)).toHaveLength(2)
    expect(
      planDxf('Battery box front', fixed)
        .split('\r\n')
        .filter(l => l === 'FIXING').length,
    ).toBe(1 + crosses.length)
    expect(plan.lines.some(l => l.is === 'fixing')).toBe(false)
  })
  it('keeps what is drawn inside the sheet it states, but for the sizes beside it', () => {
    for (const { from, to } of plan.lines)
      for (const [u, v] of [from, to]) {
        expect(u).toBeGreaterThanOrEqual(0)
        expect(u).toBeLessThanOrEqual(plan.width + 1e-12)
        expect(v).toBeGreaterThanOrEqual(0)
        expect(v).toBeLessThanOrEqual(plan.height + 1e-12)
      }
  })
})
