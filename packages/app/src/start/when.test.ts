import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ago, day } from './when.ts'

const NOW = Date.parse('2026-06-15T12:00:00Z'),
  before = (ms: number): string => ago(new Date(NOW - ms).toISOString(), NOW)

describe('when a conversion last changed', () => {
  it('is said in the largest unit that is full', () => {
    expect(before(59_000)).toBe('just now')
    expect(before(60_000)).toBe('1 minute ago')
    expect(before(59 * 60_000)).toBe('59 minutes ago')
    expect(before(3_600_000)).toBe('1 hour ago')
    expect(before(47 * 3_600_000)).toBe('1 day ago')
    expect(before(29 * 86_400_000)).toBe('29 days ago')
  })
  it('is a day of the calendar after a month', () => {
    expect(ago('2026-03-04T12:00:00Z', NOW)).toBe('on 4 March 2026')
    expect(day('2026-12-30T12:00:00Z')).toBe('30 December 2026')
  })
  it('is left out where nobody knows it, and never lies in the future', () => {
    expect(ago('', NOW)).toBe('')
    expect(before(-5000)).toBe('just now')
  })
  it('never counts nought or more than its unit holds', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 30 * 86_400_000 - 1 }), past => {
        const said = before(past)
        if (said === 'just now') return past < 60_000
        const [, n = '', unit = ''] = /^(\d+) (minute|hour|day)s? ago$/.exec(said) ?? []
        return Number(n) >= 1 && Number(n) < { minute: 60, hour: 24, day: 30 }[unit as 'day']
      }),
    )
  })
})
