import { MAY, MUST, stopLampTorque } from '../../brakes/stop-lamp.ts'
import { lowSpeedFade } from '../../brakes/wheel-slip.ts'
import type { Figure, Value } from '../../working/value.ts'
import { ledger } from '../donor/ledger.ts'
import { rolling } from '../donor/rolling.ts'
import { type Envelope, envelopes } from '../drive/envelopes.ts'
import { from, type Gaps, isGaps, maybe, study } from '../study.ts'
import { AT_KERB, type Braking, motorBraking } from './motor-braking.ts'

export type Lamp = {
  /** What the motors slow the car by at most, at kerb: the lightest it is driven. */
  readonly deceleration: Figure
  /** Decelerations above which the lamps may and must light. */
  readonly may: Value
  readonly must: Value
  readonly fade: { readonly jerk: Figure } | Gaps | 'wrong order'
}

/** At which torque the stop lamps may and must light while the motors slow the car, and how that fades out at low speed. */
export const lamp = study({
  id: 'lamp',
  stage: 'brakes & steering',
  asks: 'When must the motors light the stop lamps, and how do they let go at low speed?',
  reads: (m, ask) => {
    const units = Object.keys(m.drive.units)
    return {
      names: units,
      motors: from(ask(motorBraking), b => ({ at: b.cases[AT_KERB] as Braking | Gaps })),
      units: units.map(name =>
        maybe({
          unit: from(ask(envelopes), e => ({ e: e.units[name] as Envelope | Gaps })),
          kerb: ask(ledger),
          radius: from(ask(rolling), r => r.radius),
        }),
      ),
      fade: maybe({ from: m.drive.regeneration.cutOffSpeed, to: m.brakes.recovery.fadesTo }),
    }
  },
  answer: ({ names, motors, units, fade }, make): Lamp => {
    const { deceleration } = motors.at as unknown as Braking
    units.forEach((u, i) => {
      if (isGaps(u)) return
      const e = (u.unit as unknown as { e: Envelope }).e,
        name = names[i] as string
      make.all(
        'torque',
        stopLampTorque,
        { mass: (u.kerb as { kerb: Value }).kerb, radius: u.radius as Value, efficiency: e.efficiency, ratio: e.ratio },
        {
          item: name,
          labels: { may: `Torque of ${name} above which stop lamps may light`, must: `Torque of ${name} above which they must` },
        },
      )
    })
    const lights = { deceleration, may: MAY, must: MUST }
    if (isGaps(fade)) return { ...lights, fade }
    if (fade.to.value >= fade.from.value || deceleration.value <= 0) return { ...lights, fade: 'wrong order' }
    const { figures } = make.all(
      'fade',
      lowSpeedFade,
      { from: fade.from as Value, to: fade.to as Value, deceleration },
      {
        labels: { time: 'Time constant of letting go', jerk: 'Jerk as the motors let go' },
      },
    )
    return { ...lights, fade: { jerk: figures.jerk } }
  },
})
