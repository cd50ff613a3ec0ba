import type { Source } from '../sources.ts'

/** A value for the class of on-board chargers, with the half-width that should hold 19 in 20. Only ever used as an assumption that shows. */
export type ChargingClassValue = { readonly value: number; readonly half: number; readonly note: string; readonly source: Source }

/**
 * Wall to pack of the charger itself. Whole recharges of three cars on 6.6 to 7.2 kW gave 0.88 to 0.92 of the wall energy; what such cars draw while awake (some
 * 200 W) is counted apart, so that slow charging comes out worse, as measured.
 */
export const classChargerEfficiency = (): ChargingClassValue => ({
  value: 0.91,
  half: 0.03,
  note: 'on-board chargers of 6.6 to 7.2 kW, standing load apart',
  source: {
    work: 'epa-doe-2019',
    place: 'wall energy of a full recharge against battery size, three cars: 0.89 to 0.92; recomputed',
    mark: 'common practice',
  },
})
/** What the car's own electronics draw while it charges. */
export const classStandingPower = (): ChargingClassValue => ({
  value: 200,
  half: 100,
  note: 'car electronics awake while charging',
  source: { work: 'adac-2022', place: 'four cars, 100 to 300 W' },
})
