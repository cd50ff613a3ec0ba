import { describe, expect, it } from 'vitest'
import { type CycleId, cycles, isCycleId } from './cycles.ts'

const MILE = 1609.344
const ids = Object.keys(cycles) as CycleId[]
const metres = (id: CycleId, from = 0, to = Number.POSITIVE_INFINITY) => {
  const { times, speeds } = cycles[id]()
  let sum = 0
  for (let i = 1; i < times.length; i++) {
    const start = times[i - 1] ?? Number.NaN,
      end = times[i] ?? Number.NaN
    if (start >= from && end <= to) sum += (end - start) * (((speeds[i - 1] ?? Number.NaN) + (speeds[i] ?? Number.NaN)) / 2)
  }
  return sum
}
/** Sum of the speeds in km/h over the seconds of a phase, as the regulation prints it for checking. */
const speedSum = (id: CycleId, from: number, to: number) =>
  cycles[id]()
    .speeds.slice(from, to + 1)
    .reduce((sum, speed) => sum + speed * 3.6, 0)

describe('the standard cycles', () => {
  it('are ten, each known by its id and by nothing else', () => {
    expect(ids).toHaveLength(10)
    for (const id of ids) expect(cycles[id]().id).toBe(id)
    expect(ids.every(isCycleId)).toBe(true)
    expect(['constructor', 'wltc', ''].some(isCycleId)).toBe(false)
  })

  it('give the same trace to all who ask', () => {
    for (const id of ids) expect(cycles[id]()).toBe(cycles[id]())
  })

  it('run from second 0 to the published end, a point a second, from rest to rest, never below zero', () => {
    for (const id of ids) {
      const { times, speeds, published } = cycles[id]()
      expect(speeds).toHaveLength(published.duration + 1)
      expect([...times]).toEqual(Array.from({ length: published.duration + 1 }, (_, second) => second))
      expect([speeds[0], speeds.at(-1)]).toEqual([0, 0])
      expect(speeds.every(speed => speed >= 0 && Number.isFinite(speed))).toBe(true)
    }
  })

  it('reach the published greatest speed', () => {
    for (const id of ids) expect(Math.max(...cycles[id]().speeds), id).toBeCloseTo(cycles[id]().published.max ?? Number.NaN, 9)
  })

  it.each([
    // half of the last place that is printed; the NEDC from segments is known to be 0.06 % long, Artemis is only known to 5 m
    ['wltc-3b', 23266, 0.5],
    ['wltc-3a', 23194, 0.5],
    ['udds', 7.45 * MILE, 0.005 * MILE],
    ['hwfet', 10.26 * MILE, 0.005 * MILE],
    ['us06', 8.01 * MILE, 0.005 * MILE],
    ['nedc', 11007, 7],
    ['artemis-urban', 4870, 5],
    ['artemis-rural', 17275, 5],
    ['artemis-motorway-130', 28737, 5],
    ['artemis-motorway-150', 29547, 5],
  ] as const)('%s covers its published distance', (id, distance, within) => {
    expect(cycles[id]().published.distance).toBeCloseTo(distance, 9)
    expect(Math.abs(metres(id) - distance)).toBeLessThanOrEqual(within)
  })

  it('have phases that follow one another from the first to the last second and are at rest at their limits', () => {
    for (const id of ids) {
      const { phases, speeds, published } = cycles[id]()
      if (phases.length === 0) continue
      expect(phases[0]?.from).toBe(0)
      expect(phases.at(-1)?.to).toBe(published.duration)
      for (const [index, { from, to }] of phases.entries()) {
        expect([speeds[from], speeds[to]]).toEqual([0, 0])
        if (index > 0) expect([0, 1]).toContain(from - (phases[index - 1]?.to ?? Number.NaN))
      }
    }
  })

  it('cite their regulation or paper', () => {
    for (const id of ids) {
      const { source, confidence } = cycles[id]()
      expect(source.work).toMatch(/^(UN GTR No\. 15|UN Regulation No\. 83|40 CFR Part (86|600)|M\. André, .+ \(2004\) .+)$/)
      expect(source.place).not.toBe('')
      expect(confidence.because).not.toBe('')
    }
  })
})

describe('the worldwide cycle', () => {
  it.each([
    ['low', 11140.3, 3095],
    ['medium', 17121.2, 4756],
    ['high', 25782.2, 7162],
    ['extra-high', 29714.9, 8254],
  ])('class 3b has the speed sum and distance of UN GTR No. 15 in its %s phase', (name, sum, distance) => {
    const { from, to } = cycles['wltc-3b']().phases.find(phase => phase.name === name) ?? { from: -1, to: -1 }
    expect(speedSum('wltc-3b', from, to)).toBeCloseTo(sum, 6)
    expect(Math.abs(metres('wltc-3b', from, to) - distance)).toBeLessThanOrEqual(0.51)
  })

  it.each([
    ['low', 3095],
    ['medium', 4721],
    ['high', 7124],
    ['extra-high', 8254],
  ])('class 3a has the distance of UN GTR No. 15 in its %s phase', (name, distance) => {
    const { from, to } = cycles['wltc-3a']().phases.find(phase => phase.name === name) ?? { from: -1, to: -1 }
    expect(Math.abs(metres('wltc-3a', from, to) - distance)).toBeLessThanOrEqual(0.51)
  })

  it('has the total speed sums of UN GTR No. 15', () => {
    expect(speedSum('wltc-3b', 0, 1800)).toBeCloseTo(83758.6, 6)
    expect(speedSum('wltc-3a', 0, 1800)).toBeCloseTo(83496.9, 6)
  })
})

describe('the other cycles', () => {
  it('UDDS and HWFET have their published mean speeds', () => {
    expect((metres('udds') / MILE / 1369) * 3600).toBeCloseTo(19.6, 1)
    expect((metres('hwfet') / MILE / 765) * 3600).toBeCloseTo(48.3, 1)
  })

  it('US06 drives 596 s at a mean of 48.4 mph', () => {
    expect((metres('us06') / MILE / 596) * 3600).toBeCloseTo(48.4, 1)
  })

  it('NEDC covers 1.013 km in each urban cycle and 6.955 km outside, within 0.2 %', () => {
    const [one, two, three, four, outside] = cycles.nedc().phases.map(({ from, to }) => metres('nedc', from, to))
    for (const urban of [one, two, three, four]) expect(Math.abs((urban ?? Number.NaN) / 1013 - 1)).toBeLessThan(0.002)
    expect(Math.abs((outside ?? Number.NaN) / 6955 - 1)).toBeLessThan(0.0002)
  })

  it('the two motorway variants differ in their fast middle only', () => {
    const slow = cycles['artemis-motorway-130']().speeds,
      fast = cycles['artemis-motorway-150']().speeds
    const different = [...slow.keys()].filter(second => slow[second] !== fast[second])
    expect([different[0], different.at(-1)]).toEqual([713, 891])
  })
})
