import { blindString, moduleGrouping, weakestExpected } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { column, columns } from '../cell-data.ts'
import { proven } from '../proof.ts'

/** Capacity of each cell of a lot [Ah], one value for each cell. */
function capacities(file: string): readonly number[] | undefined {
  const data = columns(file)
  if (!data) return undefined
  const cell = column(data, 'cell'),
    capacity = column(data, 'capacity_Ah')
  return [...new Map(Array.from(cell, (c, k) => [c, capacity[k] as number] as const)).values()]
}
const check = (what: string, expected: number, obtained: number, tolerance: number, unit: string): void =>
  expect(
    proven({
      domain: 'battery',
      check: what,
      source: 'PulseBat data, doi:10.1038/s41467-024-54454-0',
      mark: 'published',
      expected,
      obtained,
      tolerance,
      unit,
    }),
    `${what}: expected ${expected}, got ${obtained}`,
  ).toBe(true)
const best = (lot: readonly number[], n: number): number => [...lot].sort((a, b) => b - a)[n - 1] as number
/** Whole tenths of an ampere-hour, as the published groupings count. */
const tenths = (lot: readonly number[]): readonly number[] => lot.map(q => Math.round(q * 10))

const lfp = capacities('used-lfp35-pulse5s.csv'),
  nmc = capacities('used-nmc21-pulse5s.csv')

describe.skipIf(!lfp || !nmc)('lots of retired cells', () => {
  it('make strings as weak as counted elsewhere, and weaker than mean and spread promise', () => {
    check('24 of the LFP lot taken blindly', 26.5496, blindString({ lot: lfp!, wanted: 24 }), 5e-4, 'Ah')
    check('best 24 of the LFP lot', 29.957, best(lfp!, 24), 5e-4, 'Ah')
    check('24 of the NMC lot taken blindly', 16.7577, blindString({ lot: nmc!, wanted: 24 }), 5e-4, 'Ah')
    check('best 24 of the NMC lot', 20.936, best(nmc!, 24), 5e-4, 'Ah')
    check('weakest of the NMC lot once its five weakest are out', 20.531, best(nmc!, nmc!.length - 5), 5e-4, 'Ah')
    const mean = nmc!.reduce((a, b) => a + b, 0) / nmc!.length,
      spread = Math.sqrt(nmc!.reduce((s, q) => s + (q - mean) ** 2, 0) / (nmc!.length - 1))
    const normal = mean + weakestExpected({ of: 24, place: 1 }) * spread
    check('24 of the NMC lot by the normal law', 18.4146, normal, 2e-3, 'Ah')
    expect(normal - blindString({ lot: nmc!, wanted: 24 })).toBeGreaterThan(1.6)
  })
  it('are sorted into parallel groups as well as the published heuristics do', () => {
    const lfpTenths = tenths(lfp!),
      nmcTenths = tenths(nmc!),
      fours = moduleGrouping(lfpTenths, 14, 4)
    check('bound of 14 groups of four, LFP lot', 1188, Math.floor(fours.bound), 0, '0.1 Ah')
    check('14 groups of four, LFP lot: reaches the bound', 1188, fours.weakest, 0, '0.1 Ah')
    check('28 pairs, LFP lot', 589, moduleGrouping(lfpTenths, 28, 2).weakest, 0, '0.1 Ah')
    check('26 pairs, NMC lot', 369, moduleGrouping(nmcTenths, 26, 2).weakest, 0, '0.1 Ah')
  })
})
