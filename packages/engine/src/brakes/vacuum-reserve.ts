import { formula } from '../working/formula.ts'
import { HANDBOOK, pressure, volume, workedBy } from './symbols.ts'

const hand = workedBy('gas')
const full = { volume: 5.5e-3, swept: 1.3e-3, dead: 0.15e-3, start: 30e3, atmosphere: 100e3 }
const after = (applications: number, swept: number, kPa: number, within: number) => ({
  takes: { ...full, applications, swept },
  gives: kPa * 1000,
  within: within * 1000,
  source: hand(`tank and booster 5.5 L from 30 kPa, ${applications} applications of ${swept * 1000} L`),
})

/** Pressure in tank and booster after so many applications with no pump running. Each one lets in the same mass of air, so the pressure climbs nearly in a line. */
export const vacuumReserve = formula(
  {
    id: 'vacuum-reserve',
    label: 'Vacuum left after applications',
    gives: pressure('p_n', 'absolute pressure left'),
    takes: {
      applications: { symbol: 'n', unit: '1', label: 'applications of the brake', shows: 'count', holds: [1, 12] },
      volume: volume('V', 'tank, booster in front of the diaphragm, and dead volume behind it'),
      swept: volume('V_s', 'volume one application sweeps'),
      dead: { ...volume('V_d', 'dead volume behind the diaphragm'), holds: [1e-5, 1e-3] },
      start: pressure('p', 'absolute pressure before'),
      atmosphere: pressure('p_0', 'pressure of the air'),
    },
    text: 'a = 1 − V_d / V\nb = p_0 · (V_d + V_s) / V\np_n = min(p_0, a^n · p + b · (1 − a^n) / (1 − a))',
    source: { work: 'gas', place: 'air let in at one temperature' },
    leavesOut: `Leaks and the pump. UN R13 Annex 7 asks for secondary braking after 8 full applications with a pump (from memory); some 0.5 to 0.7 bar below the air is of use, 33 to 36 mbar less for each 300 m of height (common practice). ${HANDBOOK}`,
    proof: {
      examples: [
        after(1, 1.3e-3, 55.55, 0.006),
        after(2, 1.3e-3, 80.39, 0.006),
        after(3, 1.3e-3, 100, 0.006),
        after(1, 0.5e-3, 41, 0.05),
        after(2, 0.5e-3, 51.7, 0.05),
        after(3, 0.5e-3, 62.1, 0.05),
        after(4, 0.5e-3, 72.2, 0.05),
      ],
    },
  },
  ({ applications, volume, swept, dead, start, atmosphere }) => {
    const kept = (1 - dead / volume) ** applications,
      entering = (atmosphere * (dead + swept)) / volume
    return Math.min(atmosphere, kept * start + (entering * (1 - kept)) / (dead / volume))
  },
)
