import type { Source } from '../sources.ts'

/** A value for the class of brakes, with the half-width that should hold 19 in 20. Only ever used as an assumption that shows. */
export type BrakeClassValue = { readonly value: number; readonly half: number; readonly note: string; readonly source: Source }

/** What the air takes from one disc or drum at town and country speeds: 3 to 6 W/K in town, more where it is ventilated and the car is faster. */
export const classBrakeCooling = (): BrakeClassValue => ({
  value: 6,
  half: 3,
  note: 'discs and drums of cars at town to country speeds',
  source: { work: 'practice', place: '3 to 6 W/K in town, 8 to 12 W/K ventilated at 80 to 100 km/h', mark: 'common practice' },
})
