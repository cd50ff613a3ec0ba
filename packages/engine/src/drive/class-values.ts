import type { Source } from '../sources.ts'
import type { Fact } from '../working/value.ts'

/** A value for a class of motors, with the half-width that should hold 19 in 20. Only ever used as an assumption that shows. */
export type DriveClassValue = { readonly value: number; readonly half: number; readonly note: string; readonly source: Source }
export type ClassOfMotor = 'permanent-magnet' | 'induction' | 'series-dc'

const practice = (place: string): Source => ({ work: 'practice', place, mark: 'common practice' })
const isClass = (kind: string | undefined): kind is ClassOfMotor => kind !== undefined && kind in BEST

/** Best efficiency of the motor alone. */
const BEST: Readonly<Record<ClassOfMotor, readonly [number, number]>> = {
  'permanent-magnet': [0.96, 0.01],
  induction: [0.92, 0.02],
  'series-dc': [0.86, 0.04],
}
const INVERTER = [0.98, 0.01] as const

export const classBestEfficiency = (kind: string | undefined): DriveClassValue | undefined =>
  isClass(kind)
    ? { value: BEST[kind][0], half: BEST[kind][1], note: `${kind} traction motors`, source: practice('best efficiency by kind of motor') }
    : undefined
export const classInverterEfficiency = (): DriveClassValue => ({
  value: INVERTER[0],
  half: INVERTER[1],
  note: 'traction inverters',
  source: practice('best efficiency of inverters: 0.97 to 0.99'),
})
/** How far the losses of one motor stray from its class, or from the map of another sample, beside the best point. */
export const classLossFactor = (): DriveClassValue => ({
  value: 1,
  half: 0.15,
  note: 'one motor against its class or its published map',
  source: practice('spread of losses beside the best point'),
})
export const classRotorInertia = (): DriveClassValue => ({
  value: 0.05,
  half: 0.03,
  note: 'rotors of car traction motors',
  source: practice('rotor inertia 0.02 to 0.08 kg·m²'),
})
export const classInputInertia = (): DriveClassValue => ({
  value: 0.15,
  half: 0.05,
  note: 'flywheel and clutch kept',
  source: practice('flywheel and clutch 0.1 to 0.2 kg·m²'),
})
export const classWindingLimit = (): DriveClassValue => ({
  value: 428.15,
  half: 15,
  note: 'insulation class F',
  source: { work: 'iec-60085', place: 'thermal class 155 (F)', mark: 'from memory' },
})
export const classCoolant = (): DriveClassValue => ({
  value: 333.15,
  half: 10,
  note: 'coolant a rating is usually stated at',
  source: practice('coolant temperature of continuous ratings'),
})
export const classShiftTime = (shifting: string | undefined): DriveClassValue | undefined =>
  shifting === 'with clutch'
    ? { value: 0.8, half: 0.3, note: 'a brisk change with the clutch', source: practice('time without pull in one gear change') }
    : shifting === 'without clutch'
      ? {
          value: 1.5,
          half: 0.7,
          note: 'waiting for the synchromesh to bring the rotor to speed',
          source: practice('time without pull in one gear change'),
        }
      : undefined

/** Best efficiency of motor and inverter together that the loss shape of a class is drawn for. */
export const classEfficiencyTogether = (kind: ClassOfMotor): Fact => ({
  path: `class.motor.${kind}.best-efficiency`,
  label: `best efficiency of the class, motor and inverter, ${kind}`,
  symbol: 'η_0',
  unit: '1',
  shows: 'share',
  value: BEST[kind][0] * INVERTER[0],
  origin: { how: 'standard', note: 'class value', source: practice('best efficiency by kind of motor and inverter') },
})
