/**
 * Every standard, book and paper the engine rests on, once. A source names one of these works and the place in it.
 *
 * `read` says how the work was read: 'confirmed' (a published copy of the passage was seen), 'from memory' (known, not re-read),
 * 'derived' (elementary: follows from definitions, no work needed), 'practice' (habit of the trade, nothing published).
 */
export type Work = { readonly title: string; readonly read: 'confirmed' | 'from memory' | 'derived' | 'practice' }

export const WORKS = {
  statics: { title: 'Elementary statics and kinematics', read: 'derived' },
  circuits: { title: 'Elementary circuit theory', read: 'derived' },
  definition: { title: 'Definition of the quantity', read: 'derived' },
  practice: { title: 'Common practice of the conversion trade', read: 'practice' },
  'mannering-washburn': { title: 'Mannering and Washburn, Principles of Highway Engineering and Traffic Analysis', read: 'from memory' },
  ehsani: { title: 'Ehsani et al., Modern Electric, Hybrid Electric and Fuel Cell Vehicles', read: 'from memory' },
  gillespie: { title: 'Gillespie, Fundamentals of Vehicle Dynamics', read: 'from memory' },
  wong: { title: 'Wong, Theory of Ground Vehicles', read: 'from memory' },
  bosch: { title: 'Bosch Automotive Handbook', read: 'from memory' },
  hucho: { title: 'Hucho, Aerodynamics of Road Vehicles', read: 'from memory' },
  etrto: { title: 'ETRTO Standards Manual', read: 'from memory' },
  'iso-2533': { title: 'ISO 2533 Standard atmosphere', read: 'from memory' },
  'un-r100': { title: 'UN Regulation No. 100, electric power train', read: 'confirmed' },
  'eu-1230-2012': { title: 'Regulation (EU) No 1230/2012, masses and dimensions', read: 'from memory' },
  'epa-2022': { title: 'US EPA, model year 2022 light-duty base-year fleet table (file of 2023-08-31)', read: 'confirmed' },
  'iso-80000-3': { title: 'ISO 80000-3 Quantities and units, space and time (standard acceleration of free fall)', read: 'from memory' },
} as const satisfies Record<string, Work>

export type WorkKey = keyof typeof WORKS

/** One place in one work. `mark` weakens it where the passage itself was not read or is only a habit. */
export type Source = { readonly work: WorkKey; readonly place: string; readonly mark?: 'from memory' | 'common practice' }

/** The mark a reader must see beside what rests on this source; undefined where a published passage was read or nothing needs one. */
export function markOf(source: Source): 'from memory' | 'common practice' | undefined {
  if (source.mark) return source.mark
  const { read } = WORKS[source.work]
  return read === 'from memory' ? 'from memory' : read === 'practice' ? 'common practice' : undefined
}
