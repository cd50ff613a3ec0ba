import { describe, expect, it } from 'vitest'
import { classFigure } from './class-figures.ts'
import { driveRungs } from './drive-rungs.ts'
import { packRungs, window400 } from './pack-rungs.ts'
import { NICKEL } from './planned.ts'

describe('packs to choose from', () => {
  const rungs = packRungs()

  it('stay inside the window of charger, DC-DC, heater and inverter, and of what one BMS watches', () => {
    const { floor, ceiling, cells } = window400()
    expect([floor, ceiling, cells]).toEqual([250, 420, 108])
    for (const r of rungs) {
      expect(r.cells * NICKEL.highest, r.part.id).toBeLessThanOrEqual(ceiling + 1e-9)
      expect(r.cells * NICKEL.lowest, r.part.id).toBeGreaterThanOrEqual(floor)
      expect(r.cells).toBeLessThanOrEqual(cells)
    }
  })

  it('hold more from one to the next, and none weighs more than another that holds as much', () => {
    for (const [i, r] of rungs.entries()) {
      const before = rungs[i - 1]
      if (before) expect(r.holds).toBeGreaterThan(before.holds)
      expect(
        rungs.some(o => o !== r && o.mass <= r.mass && o.holds >= r.holds),
        r.part.id,
      ).toBe(false)
    }
    expect(rungs.length).toBeGreaterThan(10)
  })

  it('are of modules that have a price and are no high voltage by themselves', () => {
    for (const { part } of rungs) {
      expect(part.price).toBeDefined()
      expect((classFigure(part, 'cells-in-series') as number) * NICKEL.highest).toBeLessThanOrEqual(60)
    }
  })
})

describe('motors to choose from', () => {
  it('grow from one to the next, and each has an inverter or brings one', () => {
    for (const way of ['drive unit', 'two drive units', 'kept gearbox, one gear', 'kept gearbox, shifting', 'single reduction'] as const) {
      const powers = driveRungs(way).map(([m]) => classFigure(m.part, 'peak-power') as number)
      expect(powers).toEqual([...powers].sort((a, b) => a - b))
      for (const rung of driveRungs(way)) {
        expect(rung).toHaveLength(way === 'two drive units' ? 2 : 1)
        for (const { part, inverter } of rung)
          if (!part.class.startsWith('drive-unit'))
            expect(classFigure(inverter as never, 'power')).toBeGreaterThanOrEqual((classFigure(part, 'peak-power') as number) - 1)
      }
    }
  })
})
