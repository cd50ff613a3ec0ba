import { type ClassOfMotor, classEfficiencyTogether } from '../../drive/class-values.ts'
import { lossByEfficiency, lossesOfMap } from '../../drive/loss-map.ts'
import { classDrag, classLosses, lossAt, lossFactor, motorLoss, ratedHeat, windingHeat } from '../../drive/motor-loss.ts'
import { ratedSpeed, windingConductance, windingHeatCapacity, windingTime } from '../../drive/winding.ts'
import type { DriveUnit, Motor } from '../../model/drive.ts'
import { type AnyValue, type Curve, type Field, type Figure, type Grid, isGap, type Value } from '../../working/value.ts'
import { type Ask, either, from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { type Envelope, envelopes } from './envelopes.ts'
import { type GearDrag, gearFigures } from './gear-losses.ts'
import { inverterBridges } from './inverter-bridge.ts'
import { lawFor, lossesByLaw, type MotorLaw } from './motor-losses.ts'
import type { UnitFigures } from './unit-figures.ts'

/** Every unit with its losses and its winding: what trips and sums about duration need. */
export const driveUnits = study({
  id: 'unit',
  stage: 'drive',
  asks: 'What does each motor lose, and how long does its winding stand it?',
  reads: (m, ask) => ({
    names: Object.keys(m.drive.units),
    units: Object.entries(m.drive.units).map(([name, u]) => {
      const envelope = from(ask(envelopes), e => e.units[name] as Envelope | Gaps)
      return maybe({
        envelope,
        rating: isGaps(envelope) ? null : envelope.continuous,
        kind: u.motor.kind,
        peakTime: u.motor.peakTime,
        thermalTime: isGap(u.motor.thermalTime) ? null : u.motor.thermalTime,
        statedVoltage: u.motor.statedVoltage,
        windingLimit: u.motor.windingLimit,
        coolant: u.motor.coolantTemperature,
        losses: losses(u.motor, inverterEfficiency(u, name, ask), lawFor(ask, name)),
        drag: isGap(u.motor.unpoweredDrag) ? null : u.motor.unpoweredDrag,
        gears: { still: u.gearDrag, atTop: u.gearDragAtTop },
      })
    }),
  }),
  answer: ({ names, units }, make): { units: Readonly<Record<string, UnitFigures | Gaps>> } => ({
    units: Object.fromEntries(
      units.map((u, i): [string, UnitFigures | Gaps] => {
        const name = names[i] as string,
          item = name
        if (isGaps(u)) return [name, u]
        const e = u.envelope as unknown as Envelope,
          rating = u.rating as unknown as { torque: Value; power: Value }
        const lossy = lossFigures(make, e, u, item)
        const speed = make.work(
          'rated-speed',
          ratedSpeed,
          { power: rating.power, torque: rating.torque, baseSpeed: e.baseSpeed },
          { item, label: `Speed of the continuous rating of ${name}` },
        )
        const gears = gearFigures(make, e, u.gears as GearDrag, item)
        const look = { losses: lossy.losses, factor: lossy.factor }
        const rated = make.work(
          'rated-loss',
          lossAt,
          { ...look, speed, torque: rating.torque },
          { item, label: `Loss of ${name} at its continuous rating` },
        )
        const ratedHeating = make.work(
          'rated-heat',
          ratedHeat,
          { ...look, torque: rating.torque, power: rating.power, topSpeed: e.topSpeed },
          { item, label: `Heat in the winding of ${name} at its continuous rating` },
        )
        const time =
          (u.thermalTime as Value | null) ??
          make.work(
            'winding-time',
            windingTime,
            {
              time: u.peakTime,
              rated: ratedHeating,
              peak: make.work(
                'peak-heat',
                windingHeat,
                { ...look, speed: e.baseSpeed, torque: e.motorTorque },
                { item, label: `Heat in the winding of ${name} at its peak rating` },
              ),
            },
            { item, label: `Time constant of the winding of ${name}` },
          )
        const conductance = make.work(
          'conductance',
          windingConductance,
          { rated: ratedHeating, limit: u.windingLimit, coolant: u.coolant },
          { item, label: `Winding of ${name} to coolant` },
        )
        return [
          name,
          {
            name,
            axle: e.axle,
            through: e.through,
            ratio: e.ratio,
            efficiency: e.efficiency,
            ...gears,
            peakTorque: e.peakTorque,
            peakPower: e.peakPower,
            peakTime: u.peakTime,
            continuousTorque: rating.torque,
            continuousPower: rating.power,
            baseSpeed: e.baseSpeed,
            statedVoltage: u.statedVoltage,
            topSpeed: e.topSpeed,
            inertia: e.inertia,
            losses: lossy.losses,
            lossFactor: lossy.factor,
            drag: lossy.drag,
            conductance,
            heatCapacity: make.work(
              'heat-capacity',
              windingHeatCapacity,
              { time, conductance },
              { item, label: `Heat capacity of the winding of ${name}` },
            ),
            windingTime: time,
            ratedLoss: rated,
            windingLimit: u.windingLimit,
            coolant: u.coolant,
          },
        ]
      }),
    ),
  }),
})

/** Of the whole inverter where somebody stated it; else by its power module, once its sheet is complete; else of its class. */
function inverterEfficiency({ inverter: { efficiency, bridge } }: DriveUnit, name: string, ask: Ask): Field | Figure | Gaps {
  if (!bridge.given || !(isGap(efficiency) || efficiency.origin?.how === 'assumed')) return efficiency
  const byModule = from(ask(inverterBridges), b => b.units[name] as Figure | Gaps)
  return isGaps(byModule) && !isGap(efficiency) ? efficiency : byModule
}

/** A map where there is one, else the law of its points; else what fits the loss model to the motor. */
const losses = (motor: Motor, inverter: ReturnType<typeof inverterEfficiency>, law: MotorLaw | undefined) =>
  either(isGap(motor.efficiencyMap) ? byPoints(motor, law) : { map: motor.efficiencyMap, factor: motor.lossFactor }, {
    own: motor.lossFactor,
    motor: motor.bestEfficiency,
    inverter,
  })

const byPoints = (motor: Motor, law: MotorLaw | undefined) => (law ? { law, own: motor.lossFactor } : motor.efficiencyMap)

type Lossy = { readonly losses: unknown; readonly kind: { readonly value: string }; readonly drag: unknown }
function lossFigures(make: Maker, e: Envelope, u: Lossy, item: string): { losses: Value<Grid>; factor: Value; drag: Value<Curve> } {
  const kind = u.kind.value as ClassOfMotor,
    classBest = classEfficiencyTogether(kind)
  const size = { kind: u.kind as AnyValue, efficiency: classBest, peakTorque: e.motorTorque, baseSpeed: e.baseSpeed, topSpeed: e.topSpeed }
  const numbers = [kind, classBest.value, e.motorTorque.value, e.baseSpeed.value, e.topSpeed.value] as const
  const drag =
    (u.drag as Value<Curve> | null) ??
    make.derive('drag', motorLoss, size, classDrag(...numbers), 'N·m', { item, label: `Drag of ${item} without current` })
  const known = u.losses as
    | { map: Value<Grid>; factor: Value }
    | { law: MotorLaw; own: Value }
    | { own: Value; motor: Value; inverter: Value }
  if ('law' in known) return { drag, ...lossesByLaw(make, known.law, known.own, e, item) }
  if ('map' in known)
    return {
      drag,
      factor: known.factor,
      losses: make.derive('losses', lossByEfficiency, { map: known.map }, lossesOfMap(known.map.value), 'W', {
        item,
        label: `Losses of ${item} by its map`,
      }),
    }
  return {
    drag,
    factor: make.work(
      'loss-factor',
      lossFactor,
      { own: known.own, motor: known.motor, inverter: known.inverter, efficiency: classBest },
      { item, label: `Loss factor of ${item}` },
    ),
    losses: make.derive('losses', motorLoss, size, classLosses(...numbers), 'W', {
      item,
      label: `Losses of ${item} by the shape of its class`,
    }),
  }
}
