import { type Curve, curve } from '../numerics/curve.ts'

/** Pollution degree: 1 sealed, 2 dry and clean inside a housing, 3 dust or damp. */
export type Pollution = 1 | 2 | 3
/** Material group by its tracking index: I 600 and above, II 400, III 100. */
export type MaterialGroup = 'I' | 'II' | 'III'

/** Millimetres by voltage: degree 1 for all groups, degree 2 in groups I to III, degree 3 in groups I to III. IEC 60664-1, table F.4. */
const CREEPAGE: readonly (readonly number[])[] = [
  [50, 0.18, 0.6, 0.85, 1.2, 1.5, 1.7, 1.9],
  [63, 0.2, 0.63, 0.9, 1.25, 1.6, 1.8, 2.0],
  [80, 0.22, 0.67, 0.95, 1.3, 1.7, 1.9, 2.1],
  [100, 0.25, 0.71, 1.0, 1.4, 1.8, 2.0, 2.2],
  [125, 0.28, 0.75, 1.05, 1.5, 1.9, 2.1, 2.4],
  [160, 0.32, 0.8, 1.1, 1.6, 2.0, 2.2, 2.5],
  [200, 0.42, 1.0, 1.4, 2.0, 2.5, 2.8, 3.2],
  [250, 0.56, 1.25, 1.8, 2.5, 3.2, 3.6, 4.0],
  [320, 0.75, 1.6, 2.2, 3.2, 4.0, 4.5, 5.0],
  [400, 1.0, 2.0, 2.8, 4.0, 5.0, 5.6, 6.3],
  [500, 1.3, 2.5, 3.6, 5.0, 6.3, 7.1, 8.0],
  [630, 1.8, 3.2, 4.5, 6.3, 8.0, 9.0, 10.0],
  [800, 2.4, 4.0, 5.6, 8.0, 10.0, 11.0, 12.5],
  [1000, 3.2, 5.0, 7.1, 10.0, 12.5, 14.0, 16.0],
]
/** Printed boards, millimetres by voltage: degree 1, degree 2. Table F.4, all groups but IIIb. */
const BOARDS: readonly (readonly number[])[] = [
  [50, 0.025, 0.04],
  [100, 0.1, 0.16],
  [200, 0.4, 0.63],
  [250, 0.56, 1.0],
  [320, 0.75, 1.6],
  [400, 1.0, 2.0],
  [500, 1.3, 2.5],
  [630, 1.8, 3.2],
  [800, 2.4, 4.0],
  [1000, 3.2, 5.0],
]
/** Clearances, millimetres by impulse voltage in kilovolts: degrees 1 to 3. Table F.2, case A, up to 2000 m (from memory). */
const CLEARANCE: readonly (readonly number[])[] = [
  [0.33, 0.01, 0.2, 0.8],
  [0.5, 0.04, 0.2, 0.8],
  [0.8, 0.1, 0.2, 0.8],
  [1.5, 0.5, 0.5, 0.8],
  [2.5, 1.5, 1.5, 1.5],
  [4, 3, 3, 3],
  [6, 5.5, 5.5, 5.5],
  [8, 8, 8, 8],
  [12, 14, 14, 14],
]
const MILLI = 1e-3,
  KILO = 1e3
const column = (rows: readonly (readonly number[])[], k: number, unit: number): Curve =>
  curve(
    rows.map(row => row[0]! * unit),
    rows.map(row => row[k]! * MILLI),
  )
const GROUPS: readonly MaterialGroup[] = ['I', 'II', 'III']

/** Creepage distance [m] over voltage [V, rms or DC] for basic insulation, as `creepageDistance` takes it. */
export const creepageTable = (pollution: Pollution, group: MaterialGroup): Curve =>
  column(CREEPAGE, pollution === 1 ? 1 : (pollution - 2) * 3 + 2 + GROUPS.indexOf(group), 1)
/** The same on printed boards; materials of group IIIb, under a tracking index of 175, are not covered. */
export const boardCreepageTable = (pollution: 1 | 2): Curve => column(BOARDS, pollution, 1)
/** Clearance [m] over impulse voltage [V], as `clearanceInAir` takes it. */
export const clearanceTable = (pollution: Pollution): Curve => column(CLEARANCE, pollution, KILO)
/** Factor on a clearance over height above the sea [m]. Table A.2 (from memory). */
export const altitudeTable = (): Curve => curve([2000, 3000, 4000, 5000, 6000], [1, 1.14, 1.29, 1.48, 1.7])
