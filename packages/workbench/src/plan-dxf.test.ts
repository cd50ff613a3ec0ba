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
