import {
  type Answer,
  type Caveat,
  type Comparison,
  changeFromDonor,
  compared,
  demandPositive,
  ratioToDonor,
  type Statement,
} from './comparison.ts'
import type { Limits } from './sets.ts'

/** Donors up to this net maximum power [W] fall under the variant `le60kw`; the edge itself counts as small. */
const SMALL_DONOR_POWER = 60_000

export type DrivelinePlan = {
  /** Propshaft, final drive and ratios are all those of the donor. */
  readonly drivelineKept: boolean
  /** The kept gearbox is held in one gear. */
  readonly gearLocked?: boolean
}

export type PowerPlan = DrivelinePlan & {
  /** Net maximum power of the old engine [W]. */
  readonly donorPower: number
  /** Net peak power of each motor that can act at the same time [W]. What an inverter allows for half a minute is a peak. */
  readonly motorPowers: readonly number[]
  /** Total peak fixed and sealed by software [W]. */
  readonly limitedPower?: number
}

export type TorquePlan = DrivelinePlan & {
  /** Maximum torque of the old engine [N·m]. */
  readonly donorTorque: number
  /** Peak torque at the shaft of each motor that can act at the same time [N·m], whatever the ratio behind it. */
  readonly motorTorques: readonly number[]
  /** Total motor torque fixed and sealed by software [N·m]. */
  readonly limitedTorque?: number
}

/**
 * New maximum power over that of the donor.
 *
 * Motors that can act together add. A limit that is fixed and sealed takes the place of the sum, with a caveat. Where the law moves the
 * band to torque for a kept driveline, power is not compared; the comparison under the disputed reading comes along if a gear is locked.
 */
export function powerRatio(limits: Limits, plan: PowerPlan): Answer | undefined {
  const { donorPower } = plan
  const limit = limits('power.ratio', donorPower <= SMALL_DONOR_POWER ? 'le60kw' : undefined)
  if (!limit) return undefined
  const { found, caveats } = total(plan.motorPowers, plan.limitedPower, { donorPower })
  const comparison = ratioToDonor(limit, { found, donor: donorPower, unit: 'W', caveats })
  const torqueInstead = bandOnTorqueAlone(limits, plan)
  if (!torqueInstead) return comparison
  const other = plan.gearLocked && comparison.kind === 'compared' ? { otherReading: comparison } : {}
  return { kind: 'not compared', key: 'power.ratio', ...torqueInstead, because: 'driveline-kept', ...other }
}

/** New maximum motor torque over the engine torque of the donor. Says nothing where the set has no row on torque. */
export function torqueRatio(limits: Limits, plan: TorquePlan): Comparison | Statement | undefined {
  const limit = limits('torque.ratio', plan.drivelineKept ? 'driveline-kept' : undefined)
  if (!limit) return undefined
  const { found, caveats } = total(plan.motorTorques, plan.limitedTorque, { donorTorque: plan.donorTorque })
  const disputed: readonly Caveat[] = plan.gearLocked && bandOnTorqueAlone(limits, plan) ? ['locked-gear-may-count-as-change'] : []
  return ratioToDonor(limit, { found, donor: plan.donorTorque, unit: 'N·m', caveats: [...caveats, ...disputed] })
}

/** Change of maximum power that starts an approval. */
export function powerChange(limits: Limits, plan: Omit<PowerPlan, keyof DrivelinePlan>): Comparison | Statement | undefined {
  const limit = limits('power.change.trigger')
  if (!limit) return undefined
  const { found, caveats } = total(plan.motorPowers, plan.limitedPower, { donorPower: plan.donorPower })
  return changeFromDonor(limit, { found, donor: plan.donorPower, unit: 'W', caveats })
}

/** New continuous power [W] over that of the strongest engine the maker offered in this body [W]: a dividing line, not a ban. */
export function continuousPowerRatio(
  limits: Limits,
  plan: { readonly strongestEnginePower: number; readonly continuousPowers: readonly number[] },
): Comparison | Statement | undefined {
  const limit = limits('power.ratio.continuous')
  if (!limit) return undefined
  const { found } = total(plan.continuousPowers, undefined, { strongestEnginePower: plan.strongestEnginePower })
  return ratioToDonor(limit, { found, donor: plan.strongestEnginePower, unit: 'W', role: 'trigger' })
}

/** Rise of power to weight that ends a historic privilege. Powers [W], masses [kg] on one basis. A fall never does. */
export function powerToWeightRise(
  limits: Limits,
  plan: { readonly donorPower: number; readonly donorMass: number; readonly power: number; readonly mass: number },
): Comparison | undefined {
  const limit = limits('power.historic.trigger')
  if (!limit || typeof limit.requirement.value !== 'number') return undefined
  demandPositive(plan)
  const high = limit.requirement.value
  const before = plan.donorPower / plan.donorMass
  const found = plan.power / plan.mass
  return compared(limit, {
    role: 'trigger',
    found: (100 * (found - before)) / before,
    high,
    unit: '%',
    quantity: { found, high: before * (1 + high / 100), unit: 'W/kg' },
  })
}

/** The row that moves the band from power to torque, if the law of the set has one and the driveline is kept. */
function bandOnTorqueAlone(limits: Limits, { drivelineKept }: DrivelinePlan) {
  const limit = drivelineKept ? limits('torque.ratio', 'driveline-kept') : undefined
  return limit?.requirement.variant === 'driveline-kept' ? limit : undefined
}

function total(parts: readonly number[], limited: number | undefined, donor: Readonly<Record<string, number>>) {
  const sum = parts.reduce((a, b) => a + b, 0)
  demandPositive({ ...donor, total: sum, ...(limited === undefined ? {} : { limited }) })
  const counts = limited !== undefined && limited < sum
  const caveats: readonly Caveat[] = counts ? ['limited-figure'] : []
  return { found: counts ? limited : sum, caveats }
}
