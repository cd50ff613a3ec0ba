import { powerAtCorner, torqueAtSpeed } from '../../drive/envelope.ts'
import type { Value } from '../../working/value.ts'
import { from, type Gaps, isGaps, type Maker, maybe, study, type Trace } from '../study.ts'
import { type Envelope, envelopes } from './envelopes.ts'

const POINTS_ALONG = 121
type Rating = { readonly torque: Value; readonly power: Value }
type Curves = { readonly peak: Rating; readonly topSpeed: Value; readonly continuous: Rating | Gaps }

/** Torque and power of each motor over its speed, for a short time and continuously: what a buyer compares with a datasheet. */
export const motorCurves = study({
  id: 'motor',
  stage: 'drive',
  asks: 'What torque and power does each motor give at every speed it turns?',
  reads: (m, ask) => ({
    names: Object.keys(m.drive.units),
    units: Object.keys(m.drive.units).map(name =>
      maybe(
        from(ask(envelopes), e => {
          const u = e.units[name] as Envelope | Gaps
          return isGaps(u)
            ? u
            : { peak: { torque: u.peakTorque, power: u.peakPower }, topSpeed: u.topSpeed, continuous: maybe(u.continuous) }
        }),
      ),
    ),
  }),
  answer: ({ names, units }, make): { drawn: readonly string[] } => ({
    drawn: units.flatMap((u, i) => {
      const name = names[i] as string
      if (isGaps(u)) return []
      drawn(make, u as unknown as Curves, name)
      return [name]
    }),
  }),
})

function drawn(make: Maker, { peak, topSpeed, continuous }: Curves, name: string): void {
  const speeds = Float64Array.from({ length: POINTS_ALONG }, (_, i) => (topSpeed.value * i) / (POINTS_ALONG - 1)),
    lasting = isGaps(continuous) ? undefined : continuous
  make.trace(
    'curves',
    {
      label: `Torque and power of ${name} over motor speed`,
      axis: { label: 'motor speed', unit: 'rad/s', values: speeds },
      series: [
        ...torqueAndPower(speeds, peak, 'peak', 'for a while'),
        ...(lasting ? torqueAndPower(speeds, lasting, 'continuous', 'continuously') : []),
      ],
    },
    name,
  )
}
function torqueAndPower(speeds: Float64Array, { torque, power }: Rating, name: string, label: string): Trace['series'] {
  const torques = speeds.map(speed => torqueAtSpeed({ torque: torque.value, power: power.value, speed }))
  return [
    { name: `${name} torque`, label: `torque ${label}`, unit: 'N·m', values: torques },
    {
      name: `${name} power`,
      label: `power ${label}`,
      unit: 'W',
      values: speeds.map((speed, i) => powerAtCorner({ torque: torques[i] as number, baseSpeed: speed })),
    },
  ]
}
