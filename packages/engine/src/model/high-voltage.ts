import type { Field } from '../working/value.ts'
import type { Here, Named } from './group.ts'

/** Where a wire is joined to a part: the poles of what has poles, the two sides of what is passed through, the one bar of a bar. */
export const ENDS = ['plus', 'minus', 'in', 'out', 'bar'] as const
export type End = (typeof ENDS)[number]

export type CircuitBox = Here & { readonly kind: 'battery box'; readonly box: Field<string> }
export type CircuitFuse = Here & {
  readonly kind: 'fuse'
  readonly rating: Field
  readonly voltage: Field
  readonly breaks: Field
}
export type ContactorRole = 'main' | 'precharge' | 'charging'
export type CircuitContactor = Here & {
  readonly kind: 'contactor'
  readonly role: Field<ContactorRole>
  readonly current: Field
  readonly voltage: Field
}
export type PrechargeResistor = Here & { readonly kind: 'precharge resistor'; readonly resistance: Field; readonly energy: Field }
export type ServiceDisconnect = Here & { readonly kind: 'service disconnect'; readonly current: Field; readonly voltage: Field }
export type CurrentSensor = Here & { readonly kind: 'current sensor' }
export type Busbar = Here & { readonly kind: 'bar' }
type OnTheBus = { readonly capacitance: Field; readonly bleeder: Field }
export type CircuitInverter = Here & OnTheBus & { readonly kind: 'inverter'; readonly unit: Field<string> }
export type CircuitCharger = Here & OnTheBus & { readonly kind: 'on-board charger' }
export type DcInlet = Here & { readonly kind: 'DC inlet' }
/** What takes power from the bus while the car drives. */
export type CircuitUser = Here & OnTheBus & { readonly kind: 'DC-DC' | 'heater' | 'compressor'; readonly power: Field }
export type CircuitPart =
  | CircuitBox
  | CircuitFuse
  | CircuitContactor
  | PrechargeResistor
  | ServiceDisconnect
  | CurrentSensor
  | Busbar
  | CircuitInverter
  | CircuitCharger
  | DcInlet
  | CircuitUser

/** One conductor from an end of a part to an end of another. */
export type Wire = Here & {
  readonly from: Field<string>
  readonly fromEnd: Field<End>
  readonly to: Field<string>
  readonly toEnd: Field<End>
  readonly length: Field
  readonly section: Field
  /** Over the jacket. */
  readonly diameter: Field
  /** What its insulation stands for years, by its class. */
  readonly insulation: Field
  readonly voltage: Field
  /** The warmest air along the run. */
  readonly around: Field
}
export type HighVoltage = Here & {
  readonly parts: Named<CircuitPart>
  readonly wires: Named<Wire>
}
