import { type Curve, curve } from '../numerics/index.ts'
import type { Source } from '../sources.ts'

export type ClassTaper = { readonly value: Curve; readonly note: string; readonly source: Source }
/** Charging current over charge as a share of the highest, from published sessions of warm batteries; only the maker's own table may raise it. */
const NICKEL: ClassTaper = {
  // 1.08, 0.89, 0.58, 0.39, 0.16 of capacity an hour up to 57, 72, 78, 92 and 98 %.
  value: curve([0, 0.55, 0.59, 0.7, 0.74, 0.77, 0.8, 0.91, 0.94, 1], [1, 1, 0.82, 0.82, 0.54, 0.54, 0.36, 0.36, 0.15, 0.07]),
  note: 'taper of one 64 kWh NMC car on a fast post',
  source: { work: 'press-sessions', place: '64 kWh NMC pouch, post of 175 kW' },
}
const LFP: ClassTaper = {
  value: curve([0, 0.9, 0.99, 1], [1, 1, 0.2, 0.1]),
  note: 'LFP holds its current longer: a car of one make charged 41 to 99 % in two thirds of its nickel sister’s time',
  source: { work: 'press-sessions', place: 'LFP car against its nickel sister; shape by habit', mark: 'common practice' },
}
export const classTaper = (chemistry: string | undefined): ClassTaper | undefined =>
  chemistry === 'LFP' || chemistry === 'LTO' ? LFP : chemistry === 'NMC' || chemistry === 'NCA' ? NICKEL : undefined
