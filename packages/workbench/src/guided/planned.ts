import type { PartField } from '@ampwright/catalogue'

/** A value a concept is planned with until somebody knows better: it stands in the file as assumed, and says so wherever it flows. */
const planned = (text: string, why: string): string => `${text} (assumed, ${why})`

/** A figure of a class record, written out because the field that takes it has another name. */
export const ofClass = (field: PartField, of: string): string => planned(field.text, `class of ${of}, ${field.mark}`)

/** Nickel cells of salvaged modules: voltages and the strongest current one laminate car cell was tested at. */
export const NICKEL = {
  lowest: 3,
  highest: 4.2,
  /** Of the capacity in an hour. */
  peak: 3,
  lasting: 1,
  charge: 1,
} as const

export const cellVoltage = (volts: number): string => planned(`${volts} V`, 'test limits of a laminate car cell; read the sheet')
export const peakCurrent = (amperes: number): string =>
  planned(`${amperes} A`, 'three times the hour rate, as a laminate car cell was tested; read the sheet')
export const lastingCurrent = (amperes: number): string => planned(`${amperes} A`, 'hour rate; read the sheet')
export const chargeCurrent = (amperes: number): string => planned(`${amperes} A`, 'hour rate, planning line for warm cells; read the sheet')
/** Peaks of motors and cells are stated for half a minute. */
export const peakTime = (): string => planned('30 s', 'common practice; read the sheet')
/** Drive units of the kind state half their peak for long: 40 to 55 kW of 80 to 110 kW. */
export const LASTING_SHARE = { value: 0.5, half: 0.1 } as const
export const lastingPower = (kilowatts: number, half: number): string =>
  planned(`${kilowatts} ± ${half} kW`, 'half the peak as drive units of the kind state it, from memory; read the sheet')
export const boxOverhead = (kilograms: number, half: number): string =>
  planned(`${kilograms} ± ${half} kg`, 'share of boxes and links over bare modules, common practice')
export const cellsWatched = (cells: number): string => planned(String(cells), 'a BMS of the class for each string')
export const chargerCurrent = (amperes: number): string => planned(`${amperes} A`, 'power over the voltage of the pack; read the plate')

/** Parts of a four-cylinder car that leave it, where only their place is known (common practice). */
export const engineMass = (): string =>
  planned('140 ± 30 kg', 'four-cylinder engine with ancillaries, common practice; weigh it as it comes off')
/** Tank with all its fuel [kg]. */
export const TANK_WITH_FUEL = { value: 55, half: 15 } as const
export const tankMass = (kilograms: number): string =>
  planned(`${kilograms} ± ${TANK_WITH_FUEL.half} kg`, 'tank with the fuel it held, common practice; weigh it as it comes off')
export const exhaustMass = (): string => planned('25 ± 10 kg', 'exhaust of a four-cylinder car, common practice; weigh it as it comes off')
export const betweenAxles = (middle: number): string => planned(`${middle} ± ${middle} mm`, 'somewhere between the axles, common practice')
