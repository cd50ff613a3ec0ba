import { describe, expect, it } from 'vitest'
import { rollingRadius, rollingRadiusBias, tyreDiameter } from './rolling-radius.ts'
import { turnsPerDistance } from './speedometer.ts'
import { loadedRadius } from './tyre-load.ts'

/** Size, unloaded diameter, rolling circumference, rolling radius [mm], turns per kilometre: relation of the tyre standard (from memory), worked by hand. */
const TABLE = [
  [145, 80, 13, 562.2, 1714.7, 272.9, 583.2],
  [165, 65, 15, 595.5, 1816.3, 289.1, 550.6],
  [175, 70, 14, 600.6, 1831.8, 291.5, 545.9],
  [195, 65, 15, 634.5, 1935.2, 308.0, 516.7],
  [205, 55, 16, 631.9, 1927.3, 306.7, 518.9],
  [215, 50, 17, 646.8, 1972.7, 314.0, 506.9],
  [235, 45, 18, 668.7, 2039.5, 324.6, 490.3],
] as const

describe('rolling radius', () => {
  it.each(TABLE)('of %i/%i R%i is that of the standard', (width, aspect, rim, diameter, circumference, radius, turns) => {
    const d = tyreDiameter({ rim: rim * 0.0254, width: width / 1000, aspect: aspect / 100 }),
      r = rollingRadius({ diameter: d })
    expect(Math.abs(d * 1000 - diameter)).toBeLessThan(0.051)
    expect(Math.abs(2 * Math.PI * r * 1000 - circumference)).toBeLessThan(0.11)
    expect(Math.abs(r * 1000 - radius)).toBeLessThan(0.051)
    expect(Math.abs(1000 * turnsPerDistance({ radius: r }) - turns)).toBeLessThan(0.06)
  })
  it('lies between the loaded and the unloaded radius, and a cross-ply tyre rolls less', () => {
    const d = 0.6
    expect(rollingRadius({ diameter: d })).toBeLessThan(d / 2)
    expect(rollingRadius({ diameter: d })).toBeGreaterThan(loadedRadius({ diameter: d, share: 0.95 }))
    expect(rollingRadiusBias({ diameter: d })).toBeLessThan(rollingRadius({ diameter: d }))
  })
})
