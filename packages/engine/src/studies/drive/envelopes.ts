import { baseSpeed, inertiaAtMotor, lesserPower, lesserTorque, powerAtCorner, torqueAtCorner } from '../../drive/envelope.ts'
import type { DriveUnit, Motor, Through } from '../../model/drive.ts'
import type { Model } from '../../model/model.ts'
import { type Fact, type Field, type Figure, isGap, type Value } from '../../working/value.ts'
import { from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { ratios } from './ratios.ts'

/** What a unit can do for a short time, and how it is joined to the road: enough for every sum about pulling that does not ask for how long. */
export type Envelope = {
  readonly name: string
  readonly axle: 'front' | 'rear' | 'both'
  readonly through: Through
  readonly ratio: Figure
  readonly efficiency: Value
  /** Of the motor, before any limit set in software. */
  readonly motorTorque: Value
  readonly peakTorque: Value
  readonly peakPower: Value
  readonly baseSpeed: Value
  readonly topSpeed: Value
  readonly inertia: Value
  readonly continuous: { readonly torque: Value; readonly power: Value } | Gaps
}

type Rating = { readonly torque: Field | null; readonly power: Field | null; readonly baseSpeed: Field | null }
/** Any two of peak torque, peak power and base speed; the third follows. */
function peak({ peakTorque, peakPower, baseSpeed: base }: Motor): Rating | Gaps {
  const missing = [peakTorque, peakPower, base].filter(isGap)
  if (missing.length > 1) return { gaps: missing }
  return { torque: isGap(peakTorque) ? null : peakTorque, power: isGap(peakPower) ? null : peakPower, baseSpeed: isGap(base) ? null : base }
}
/** Continuous torque or continuous power; where one is not stated the base speed joins them. */
function continuous({ continuousTorque, continuousPower }: Motor): { torque: Field | null; power: Field | null } | Gaps {
  if (isGap(continuousTorque) && isGap(continuousPower)) return { gaps: [continuousTorque, continuousPower] }
  return { torque: isGap(continuousTorque) ? null : continuousTorque, power: isGap(continuousPower) ? null : continuousPower }
}
const given = (field: Field): Field | null => (isGap(field) ? null : field)

/** Flywheel and clutch turn with the rotor where they stay; a class value for them counts only then, a typed one always. */
function inertia(m: Model, u: DriveUnit): { rotor: Field; input: Field | null } {
  const kept = !isGap(u.through) && u.through.value === 'kept gearbox',
    clutch = !isGap(u.shifting) && u.shifting.value === 'with clutch',
    input = m.donor.gearbox.inputInertia
  return { rotor: u.motor.rotorInertia, input: kept && (clutch || (!isGap(input) && input.origin?.how !== 'assumed')) ? input : null }
}

export const envelopes = study({
  id: 'envelope',
  stage: 'drive',
  asks: 'What torque and power may each motor give for a short time?',
  reads: (m, ask) => ({
    names: Object.keys(m.drive.units),
    units: Object.entries(m.drive.units).map(([name, u]) =>
      maybe({
        axle: u.axle,
        through: u.through,
        ratio: from(ask(ratios), r => r.units[name] as Figure | Gaps),
        efficiency: u.efficiency,
        peak: peak(u.motor),
        limits: { torque: given(u.torqueLimit), power: given(u.powerLimit) },
        topSpeed: u.motor.topSpeed,
        inertia: inertia(m, u),
        continuous: maybe(continuous(u.motor)),
      }),
    ),
  }),
  answer: ({ names, units }, make): { units: Readonly<Record<string, Envelope | Gaps>> } => ({
    units: Object.fromEntries(
      units.map((u, i): [string, Envelope | Gaps] => {
        const name = names[i] as string,
          item = name
        if (isGaps(u)) return [name, u]
        const motor = together(make, u.peak as Parameters<typeof together>[1], item)
        const allowed = { torque: u.limits.torque as Fact | null, power: u.limits.power as Fact | null }
        return [
          name,
          {
            name,
            axle: u.axle.value,
            through: u.through.value,
            ratio: u.ratio as Figure,
            efficiency: u.efficiency,
            motorTorque: motor.torque,
            peakTorque: allowed.torque
              ? make.work(
                  'peak-torque',
                  lesserTorque,
                  { motor: motor.torque, limit: allowed.torque },
                  { item, label: `Torque allowed, ${name}` },
                )
              : motor.torque,
            peakPower: allowed.power
              ? make.work(
                  'peak-power',
                  lesserPower,
                  { motor: motor.power, limit: allowed.power },
                  { item, label: `Power allowed, ${name}` },
                )
              : motor.power,
            baseSpeed: motor.baseSpeed,
            topSpeed: u.topSpeed,
            inertia: u.inertia.input
              ? make.work(
                  'inertia',
                  inertiaAtMotor,
                  { rotor: u.inertia.rotor, input: u.inertia.input as Value },
                  { item, label: `Inertia at the shaft of ${name}` },
                )
              : u.inertia.rotor,
            continuous: isGaps(u.continuous)
              ? u.continuous
              : rated(make, u.continuous as Parameters<typeof rated>[1], motor.baseSpeed, item),
          },
        ]
      }),
    ),
  }),
})

type Known = { readonly torque: Fact | null; readonly power: Fact | null; readonly baseSpeed: Fact | null }
function together(
  make: Maker,
  { torque: t, power: p, baseSpeed: b }: Known,
  item: string,
): { torque: Value; power: Value; baseSpeed: Value } {
  if (t && p)
    return {
      torque: t,
      power: p,
      baseSpeed: b ?? make.work('base-speed', baseSpeed, { power: p, torque: t }, { item, label: `Base speed of ${item}` }),
    }
  const base = b as Fact
  if (t)
    return {
      torque: t,
      baseSpeed: base,
      power: make.work('motor-power', powerAtCorner, { torque: t, baseSpeed: base }, { item, label: `Peak power of ${item}` }),
    }
  return {
    power: p as Fact,
    baseSpeed: base,
    torque: make.work('motor-torque', torqueAtCorner, { power: p as Fact, baseSpeed: base }, { item, label: `Peak torque of ${item}` }),
  }
}
function rated(
  make: Maker,
  { torque, power }: { torque: Fact | null; power: Fact | null },
  base: Value,
  item: string,
): { torque: Value; power: Value } {
  return {
    torque:
      torque ??
      make.work(
        'continuous-torque',
        torqueAtCorner,
        { power: power as Fact, baseSpeed: base },
        { item, label: `Continuous torque of ${item}` },
      ),
    power:
      power ??
      make.work(
        'continuous-power',
        powerAtCorner,
        { torque: torque as Fact, baseSpeed: base },
        { item, label: `Continuous power of ${item}` },
      ),
  }
}
