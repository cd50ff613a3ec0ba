import type { Source } from '../sources.ts'

/** A value for the class of steering gears, with the half-width that should hold 19 in 20. Only ever used as an assumption that shows. */
export type SteeringClassValue = { readonly value: number; readonly half: number; readonly note: string; readonly source: Source }

const habit = (value: number, half: number, note: string, place: string) => (): SteeringClassValue => ({
  value,
  half,
  note,
  source: { work: 'practice', place, mark: 'common practice' },
})

/** Tie rods and ball joints in order. */
export const classLinkageEfficiency = habit(0.875, 0.025, 'rods and joints in order', 'efficiency of rods and joints 0.85 to 0.9')
/** Rack, pinion and column in order. */
export const classGearEfficiency = habit(0.9, 0.05, 'rack and column in order', 'efficiency of rack and column about 0.9')
/** How fast a driver turns while parking. */
export const classHandwheelTurns = habit(1.25, 0.25, 'a brisk driver', '1.0 to 1.5 turns a second while parking')
/** What rolling takes off the pull. */
export const classRollingShare = habit(0.325, 0.075, 'rolling at 10 km/h', '25 to 40 % of the pull at a standstill')
/** What goes past the valve of a hydraulic rack. */
export const classRackLeakage = habit(0.15, 0.05, 'valve and seals in order', '10 to 20 % more flow than the piston takes')
/** What electric assist leaves to the driver. */
export const classDriverTorque = habit(4, 1, 'at full assist', '3 to 5 N·m at the handwheel')
/** Motor and worm gear of a column. */
export const classColumnEfficiency = habit(0.55, 0.05, 'motor and worm', '0.5 to 0.6')
