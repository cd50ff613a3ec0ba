import { applyEdits, type Edit } from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { assessText, CARS, type Car, textOf } from './cars.ts'

const SPEEDS = [50, 80, 100, 120] as const
const DAYS = ['cold', 'mild', 'hot'] as const
const assessed = (car: Car, edits: readonly Edit[] = []) => {
  const done = applyEdits(textOf(car), edits)
  if (!done.ok) throw new Error(done.problem.what)
  return assessText(done.text).assessment
}
type Assessed = ReturnType<typeof assessed>
const range = (a: Assessed, speed: number, day: string): number =>
  a.figures.get(`range-at-speeds.range@${speed} km/h ${day}`)?.value as number

describe('the range at a steady speed', () => {
  it.each(CARS)('of %s falls with the speed on every day, and is least on the cold one', car => {
    const a = assessed(car)
    for (const day of DAYS)
      for (const [i, v] of SPEEDS.entries()) if (i > 0) expect(range(a, v, day)).toBeLessThan(range(a, SPEEDS[i - 1]!, day))
    for (const v of SPEEDS) expect(range(a, v, 'cold')).toBeLessThan(range(a, v, 'mild'))
  })
  it('is what a trip at that speed gives in the same weather', () => {
    const { figures } = assessed('lapwing', [
      {
        path: 'trips.named.mixed',
        now: {
          kind: 'steady',
          speed: '80 km/h',
          slope: '0 %',
          load: 'driver',
          temperature: '20 °C',
          altitude: '100 m',
          'head-wind': '0 km/h',
          surface: 'dry',
          'cabin-power': '1.2 kW',
          'other-power': '250 W',
          'pack-temperature': '20 °C',
        },
      },
    ])
    expect(figures.get('range.range@mixed')?.value).toBeCloseTo(figures.get('range-at-speeds.range@80 km/h mild')?.value as number, 6)
  })
  it('says where a speed is not held, and names what is missing where nothing can be said', () => {
    expect(assessed('wren').tables.get('range-at-speeds.ranges')?.rows.at(-1)?.cells).toEqual({
      cold: 'not held',
      mild: 'not held',
      hot: 'not held',
    })
    const open = assessed('lapwing', [{ path: 'brief.reserve', now: null }])
    expect(open.tables.has('range-at-speeds.ranges')).toBe(false)
    expect(open.gaps.map(g => g.path)).toContain('brief.reserve')
  })
})
