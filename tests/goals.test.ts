import { describe, expect, it } from 'vitest'
import { figuresOf, outcomes, value } from './asked.ts'

describe('a speed to be held', () => {
  const held = (edits: Readonly<Record<string, string>> = {}): number =>
    value(figuresOf('otter', 'held-speed', edits), 'held-speed.speed@caravan-cruise')
  it('is held for thirty minutes with the caravan, and less fast against the wind or in the cold', () => {
    expect(outcomes('otter', {}, 'steady-speed')).toEqual(['caravan-cruise sound'])
    expect(held({ 'brief.goals.caravan-cruise.head-wind': '40 km/h' })).toBeLessThan(held())
    expect(held({ 'brief.goals.caravan-cruise.temperature': '-15 °C' })).toBeLessThan(held())
  })
  it('is faster for ten seconds than for half an hour, and no slower for half an hour than for ever', () => {
    expect(held({ 'brief.goals.caravan-cruise.duration': '10 s' })).toBeGreaterThan(held())
    expect(held({ 'brief.goals.caravan-cruise.duration': '' })).toBeLessThanOrEqual(held() * (1 + 1e-9))
  })
  it('is what the continuous rating holds by the account of top speed, but for what the battery takes off', () => {
    const edits = { 'brief.goals.caravan-cruise.duration': '' },
      top = figuresOf('otter', 'top-speed', {
        'brief.goals.top-speed.load': 'towing',
        'brief.goals.top-speed.trailer': 'caravan',
        'brief.goals.top-speed.temperature': '18 °C',
      }),
      pull = figuresOf('otter', 'held-speed', edits)
    const ratio = value(pull, 'held-speed.by-pull@caravan-cruise') / value(top, 'top-speed.by-continuous-pull@top-speed')
    expect(ratio).toBeLessThanOrEqual(1)
    expect(ratio).toBeGreaterThan(0.99)
  })
  it('goes into the window of the total ratio with the other goals', () =>
    expect(outcomes('otter', { 'drive.units.front.reduction': '30' }, 'steady-speed')).toEqual(['caravan-cruise failing']))
})

describe('a range goal with weather of its own', () => {
  const range = (edits: Readonly<Record<string, string>> = {}) => figuresOf('otter', 'range', edits)
  it('goes less far in the cold than its trip does, which stays as it is', () => {
    const both = range()
    expect(value(both, 'range.range@winter-motorway on motorway')).toBeLessThan(0.8 * value(both, 'range.range@motorway'))
    const without = range({ 'brief.goals.winter-motorway.cabin-power': '0.5 kW' })
    expect(value(without, 'range.range@motorway')).toBe(value(both, 'range.range@motorway'))
    expect(value(without, 'range.range@winter-motorway on motorway')).toBeGreaterThan(
      value(both, 'range.range@winter-motorway on motorway'),
    )
  })
  it('is the trip itself where it says nothing else', () => {
    const same = range({
      'brief.goals.winter-motorway.load': 'driver',
      'brief.goals.winter-motorway.temperature': '18 °C',
      'brief.goals.winter-motorway.cabin-power': '500 W',
      'brief.goals.winter-motorway.pack-temperature': '20 °C',
    })
    expect(value(same, 'range.range@winter-motorway on motorway')).toBe(value(same, 'range.range@motorway'))
  })
  it('takes a trailer', () => {
    const towing = range({ 'brief.goals.winter-motorway.trailer': 'caravan', 'brief.goals.winter-motorway.load': 'towing' })
    expect(value(towing, 'range.range@winter-motorway on motorway')).toBeLessThan(value(range(), 'range.range@winter-motorway on motorway'))
  })
  it('does not make the pack age as if it were winter all year', () => {
    const cycles = (edits: Readonly<Record<string, string | null>> = {}) => value(figuresOf('otter', 'life', edits), 'life.cycles')
    expect(cycles()).toBe(cycles({ 'brief.goals.winter': null, 'brief.goals.winter-motorway': null }))
  })
})
