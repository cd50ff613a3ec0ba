import {
  halfShaftTorque,
  NO_HEIGHT,
  pullLeft,
  recoveryGrip,
  recoveryPull,
  statedDisagreement,
  WORST_DRIVELINE,
} from '../../drive/part-loads.ts'
import { pullTogether, totalRatio } from '../../drive/wheel-force.ts'
import { GRAVITY } from '../../vehicle/gravity.ts'
import { gripFront, gripRear, rearShare } from '../../vehicle/grip.ts'
import { torqueAtSlip, torqueThrough } from '../../vehicle/kept-parts.ts'
import { assumptions } from '../../working/leaves.ts'
import { type Figure, isGap, standard, type Value } from '../../working/value.ts'
import { type Laden, loadCases } from '../donor/load-cases.ts'
import { rolling } from '../donor/rolling.ts'
import { heightOf } from '../donor/situation.ts'
import { from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { type Envelope, envelopes } from './envelopes.ts'
import { shifts, steps } from './ratios.ts'

const SIDE = {
  front: standard('side.front', 'front axle', 'σ', 1, '1', { work: 'definition', place: 'load moves forward' }),
  rear: standard('side.rear', 'rear axle', 'σ', -1, '1', { work: 'definition', place: 'load moves forward' }),
} as const
export type RecoveryAt = {
  readonly needed: Figure
  /** The most it can be, whatever the driveline loses and however high the centre of mass is where that makes it less; the same where nothing is assumed. */
  readonly most: Figure
  /** Share of it that snow lets through. */
  readonly snow: Figure | undefined
}
export type PartLoads = {
  readonly halfShafts: Readonly<Record<string, Figure | Gaps>>
  readonly recovery: Readonly<Record<string, RecoveryAt>> | Gaps
  /** How far stated peak torque, peak power and base speed are from fitting together, where all three are stated. */
  readonly apart: Readonly<Record<string, Figure>>
}

/** What half-shafts carry, what grip recovery asks of each axle, and whether a motor’s stated figures fit together. */
export const partLoads = study({
  id: 'part-loads',
  stage: 'drive',
  asks: 'What do half-shafts and tyres take, and do the stated figures fit together?',
  reads: (m, ask) => {
    const { load } = m.brief.conditions,
      units = Object.entries(m.drive.units)
    const laden = isGap(load)
      ? load
      : from(
          ask(loadCases),
          l =>
            (l.cases[load.value] as Laden | Gaps | undefined) ?? {
              gaps: [
                { gap: true as const, path: `brief.loads.${load.value}`, label: `load case ${load.value}`, until: 'any time' as const },
              ],
            },
        )
    const envelope = (name: string) =>
      from(ask(envelopes), e => {
        const x = e.units[name] as Envelope | Gaps
        return isGaps(x) ? x : { name }
      })
    const stand = { laden, height: heightOf(m, ask), wheelbase: m.donor.wheelbase, radius: from(ask(rolling), r => r.radius) }
    const own = units.filter(([, u]) => !isGap(u.through) && u.through.value === 'drive unit')
    return {
      envelopes: maybe(ask(envelopes)),
      shaftNames: own.map(([name]) => name),
      shafts: own.map(([name]) => maybe({ ...stand, unit: envelope(name), grip: m.donor.grip.dry })),
      recovery: maybe({
        ...stand,
        units: units.map(([name, u]) => ({
          ready: envelope(name),
          gears: shifts(u) ? Object.keys(m.donor.gearbox.gears).map(gear => ({ gear, steps: steps(m, u, gear) })) : null,
        })),
        share: m.drive.regeneration.torqueShare,
      }),
      snow: maybe(m.donor.grip.snow),
      stated: units.flatMap(([name, { motor: x }]) =>
        isGap(x.peakTorque) || isGap(x.peakPower) || isGap(x.baseSpeed)
          ? []
          : [{ name, torque: x.peakTorque, power: x.peakPower, baseSpeed: x.baseSpeed }],
      ),
    }
  },
  answer: (k, make): PartLoads => {
    const envelopeOf = (name: string): Envelope => (k.envelopes as { units: Record<string, Envelope> }).units[name] as Envelope
    return {
      halfShafts: Object.fromEntries(
        k.shafts.map((s, i): [string, Figure | Gaps] => {
          const name = k.shaftNames[i] as string,
            more = (what: string) => ({ item: name, label: `${what}, ${name}` })
          if (isGaps(s)) return [name, s]
          const e = envelopeOf(name),
            { mass, rear } = s.laden as unknown as Laden
          const grip = {
            grip: s.grip,
            rearShare: make.work('rear-share', rearShare, { rear, total: mass }, more('Rear share')),
            height: s.height,
            wheelbase: s.wheelbase,
          }
          const share = make.work('grip', e.axle === 'front' ? gripFront : gripRear, grip, more('Pull by grip over weight'))
          const slip = make.work(
            'slip',
            torqueAtSlip,
            { share, mass, gravity: GRAVITY, radius: s.radius, ratio: e.ratio, efficiency: e.efficiency },
            more('Motor torque at which the tyres slip'),
          )
          const torque = make.work('through', torqueThrough, { torque: e.peakTorque, slip }, more('Motor torque that comes through'))
          return [
            name,
            make.work('half-shaft', halfShaftTorque, { torque, ratio: e.ratio, efficiency: e.efficiency }, more('Torque in a half-shaft')),
          ]
        }),
      ),
      recovery: isGaps(k.recovery)
        ? k.recovery
        : recovery(make, { ...(k.recovery as unknown as Recovery), snow: isGaps(k.snow) ? undefined : k.snow }, envelopeOf),
      apart: Object.fromEntries(
        k.stated.map(({ name, ...stated }) => [
          name,
          make.work('apart', statedDisagreement, stated, { item: name, label: `Stated figures of ${name} apart` }),
        ]),
      ),
    }
  },
})

type Recovery = {
  laden: Laden
  height: Value
  wheelbase: Value
  radius: Value
  units: readonly { ready: { name: string }; gears: readonly { gear: string; steps: readonly Value[] }[] | null }[]
  share: Value
  snow?: Value | undefined
}
type Axle = 'front' | 'rear'
type Pull = { readonly axle: Axle; readonly pull: Figure }
const isAssumed = (v: Value): boolean => assumptions(v).length > 0

/** Grip each recovering axle needs, in the shortest gear where the box is shifted; a unit that drives both axles recovers at both, which asks less, and is counted at the rear. */
function recovery(make: Maker, r: Recovery, envelopeOf: (name: string) => Envelope): Readonly<Record<string, RecoveryAt>> {
  const ratios = r.units.map(({ ready: { name }, gears }): Value => {
    const all = (gears ?? []).map(g =>
      make.work('ratio', totalRatio, { steps: g.steps }, { item: `${name} ${g.gear}`, label: `Total ratio of ${name} in ${g.gear}` }),
    )
    return all.reduce<Value>((a, b) => (b.value > a.value ? b : a), all[0] ?? envelopeOf(name).ratio)
  })
  const braking = (key: string, label: string, lost: (e: Envelope) => Value): readonly Pull[] =>
    r.units.map(({ ready: { name } }, i) => {
      const e = envelopeOf(name)
      return {
        axle: e.axle === 'front' ? 'front' : 'rear',
        pull: make.work(
          key,
          recoveryPull,
          { share: r.share, torque: e.peakTorque, ratio: ratios[i] as Value, efficiency: lost(e), radius: r.radius },
          { item: name, label: `${label} of ${name} when recovering` },
        ),
      }
    })
  const sum = (list: readonly Value[], key: string, item?: string): Value =>
    list.length === 1
      ? (list[0] as Value)
      : make.work(key, pullTogether, { forces: list }, { ...(item ? { item } : {}), label: 'Braking pull together' })
  const axles = (pulls: readonly Pull[], most: boolean): ReadonlyMap<Axle, Figure> => {
    const key = (what: string): string => (most ? `${what}-most` : what),
      all = sum(
        pulls.map(p => p.pull),
        key('recovery-together'),
      )
    return new Map(
      (['front', 'rear'] as const).flatMap((axle): [Axle, Figure][] => {
        const here = pulls.filter(p => p.axle === axle)
        if (here.length === 0) return []
        const own = sum(
          here.map(p => p.pull),
          key('recovery-at'),
          axle,
        )
        return [
          [
            axle,
            make.work(
              key('recovery-grip'),
              recoveryGrip,
              {
                own,
                all,
                axle: r.laden[axle],
                height: most && axle === 'front' && isAssumed(r.height) ? NO_HEIGHT : r.height,
                wheelbase: r.wheelbase,
                gravity: GRAVITY,
                sign: SIDE[axle],
              },
              { item: axle, label: `Grip that recovery needs at the ${axle} axle${most ? ' at most' : ''}` },
            ),
          ],
        ]
      }),
    )
  }
  const lossy = r.units.some(({ ready: { name } }) => isAssumed(envelopeOf(name).efficiency)),
    needed = axles(
      braking('recovery-pull', 'Braking pull', e => e.efficiency),
      false,
    )
  const most =
    lossy || (needed.has('front') && isAssumed(r.height))
      ? axles(
          braking('recovery-pull-most', 'Greatest braking pull', e => (isAssumed(e.efficiency) ? WORST_DRIVELINE : e.efficiency)),
          true,
        )
      : needed
  return Object.fromEntries(
    [...needed].map(([axle, grip]): [Axle, RecoveryAt] => [
      axle,
      {
        needed: grip,
        most: most.get(axle) ?? grip,
        snow: r.snow
          ? make.work(
              'recovery-on-snow',
              pullLeft,
              { grip: r.snow, needed: grip },
              { item: axle, label: `Share of recovery snow lets through, ${axle} axle` },
            )
          : undefined,
      },
    ]),
  )
}
