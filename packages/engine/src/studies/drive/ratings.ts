import { powerHeld } from '../../drive/battery-pull.ts'
import { pullAtSpeed } from '../../drive/speeds.ts'
import { powerForTime, torqueForTime } from '../../drive/winding.ts'
import type { Figure, Value } from '../../working/value.ts'
import { isGaps, type Maker } from '../study.ts'
import { WARM_START } from './operating-points.ts'
import type { Pulling } from './pulling.ts'
import type { UnitFigures } from './unit-figures.ts'

/** What a unit gives at a speed for a time, or for ever. */
export type Rating = {
  readonly name: string
  readonly ratio: Value
  readonly torque: Value
  readonly power: Value
  readonly efficiency: Value
  readonly pull: Figure
  /** Power of the motor, were the battery to give it. */
  readonly motor: Value
}
type At = {
  readonly pulling: Pulling
  readonly units: readonly UnitFigures[]
  readonly ratios: readonly Value[]
  readonly radius: Value
  readonly speed: Value
  readonly item: string
}

/** Ratings of all units at one speed: for a time, from warm windings, and continuously. */
export function ratingsFor(make: Maker, { pulling: p, units: list, ratios, radius, speed, item }: At) {
  const rated = (
    key: string,
    label: string,
    torque: (u: UnitFigures, i: number) => Value,
    power: (u: UnitFigures, i: number, torque: Value) => { readonly motor: Value; readonly held: Value },
  ): readonly Rating[] =>
    list.map((u, i) => {
      const t = torque(u, i),
        { motor, held } = power(u, i, t),
        ratio = ratios[i] as Value
      return {
        name: u.name,
        ratio,
        torque: t,
        power: held,
        efficiency: u.efficiency,
        motor,
        pull: make.work(
          `${key}-pull`,
          pullAtSpeed,
          { torque: t, power: held, ratio, efficiency: u.efficiency, radius, speed },
          { item: `${item} ${u.name}`, label: `Pull of ${u.name} ${label}` },
        ),
      }
    })
  const timed = (key: string, label: string, duration: Value): readonly Rating[] =>
    rated(
      key,
      label,
      u =>
        make.work(
          `${key}-torque`,
          torqueForTime,
          {
            duration,
            start: WARM_START,
            time: u.windingTime,
            rated: u.continuousTorque,
            allowed: u.peakTorque,
          },
          { item: `${item} ${u.name}`, label: `Torque of ${u.name} ${label}` },
        ),
      (u, i, torque) => {
        const motor = make.work(
          `${key}-power`,
          powerForTime,
          { rated: u.continuousPower, torque, ratedTorque: u.continuousTorque, allowed: u.peakPower },
          { item: `${item} ${u.name}`, label: `Power of ${u.name} ${label}` },
        )
        const battery = p.lasting[i]?.battery,
          peak = p.motors.power[i] as Value,
          pack = battery && (duration.value > 30 || isGaps(battery.half) ? battery.ever : battery.half)
        const held = pack
          ? make.work(
              `${key}-held`,
              powerHeld,
              { motor, pack, peak },
              { item: `${item} ${u.name}`, label: `Power of ${u.name} ${label}, with this battery` },
            )
          : motor
        return { motor, held }
      },
    )
  const continuous = (): readonly Rating[] =>
    rated(
      'continuous',
      'continuously',
      u => u.continuousTorque,
      (u, i) => ({ motor: u.continuousPower, held: (p.lasting[i] as { power: Value }).power }),
    )
  return { timed, continuous }
}

/** The motors would pull harder, were the battery to give their power. */
export const heldBackByBattery = (all: readonly Rating[], radius: Value, speed: Value): boolean =>
  all.some(
    ({ torque, ratio, motor, efficiency, pull }) =>
      pull.value <
      pullAtSpeed({
        torque: torque.value,
        power: motor.value,
        ratio: ratio.value,
        efficiency: efficiency.value,
        radius: radius.value,
        speed: speed.value,
      }),
  )
