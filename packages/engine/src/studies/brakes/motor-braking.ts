import { motorsBraking, motorsFrontShare } from '../../brakes/motors-braking.ts'
import { NO_HEIGHT, pullLeft, recoveryGrip, recoveryPull, WORST_DRIVELINE } from '../../drive/part-loads.ts'
import { pullTogether, totalRatio } from '../../drive/wheel-force.ts'
import { GRAVITY } from '../../vehicle/gravity.ts'
import { assumptions } from '../../working/leaves.ts'
import { type Figure, standard, type Value } from '../../working/value.ts'
import { ledger } from '../donor/ledger.ts'
import { type Laden, loadCases } from '../donor/load-cases.ts'
import { rolling } from '../donor/rolling.ts'
import { heightOf } from '../donor/situation.ts'
import { type Envelope, envelopes } from '../drive/envelopes.ts'
import { shifts, steps } from '../drive/ratios.ts'
import { from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'

export const AT_KERB = 'at kerb'
export type Axle = 'front' | 'rear'
export type Braking = { readonly braking: Figure; readonly deceleration: Figure }
export type MotorBraking = {
  /** Of each motor at the wheels; a motor whose losses nobody measured is taken to lose most. */
  readonly each: readonly Value[]
  readonly frontShare: Figure
  /** At kerb and in each load case. */
  readonly cases: Readonly<Record<string, Braking | Gaps>>
  /** Greatest grip needed at each axle over all loads, and the load it comes with. */
  readonly worst: Readonly<
    Partial<Record<Axle, { readonly needed: Figure; readonly load: string; readonly left: Readonly<Record<string, Figure>> }>>
  >
}

const SIDE = {
  front: standard('side.front', 'front axle', 'σ', 1, '1', { work: 'definition', place: 'load moves forward' }),
  rear: standard('side.rear', 'rear axle', 'σ', -1, '1', { work: 'definition', place: 'load moves forward' }),
} as const
const isAssumed = (v: Value): boolean => assumptions(v).length > 0

/** What the motors brake with at their strongest, under every load, on which axle, and what grip that needs. */
export const motorBraking = study({
  id: 'motor-braking',
  stage: 'brakes & steering',
  asks: 'How hard do the motors slow the car, and what grip does that need?',
  reads: (m, ask) => {
    const loads = ask(loadCases),
      units = Object.entries(m.drive.units)
    return {
      envelopes: units.map(([name]) => from(ask(envelopes), e => ({ e: e.units[name] as Envelope | Gaps }))),
      names: units.map(([name]) => name),
      gears: units.map(([, u]) =>
        shifts(u) ? Object.keys(m.donor.gearbox.gears).map(gear => ({ gear, steps: steps(m, u, gear) })) : null,
      ),
      share: units.length ? m.drive.regeneration.torqueShare : null,
      radius: from(ask(rolling), r => r.radius),
      kerb: ask(ledger),
      caseNames: Object.keys(m.brief.loads),
      cases: Object.keys(m.brief.loads).map(name => maybe(from(loads, l => ({ laden: l.cases[name] as Laden | Gaps })))),
      stand: maybe({ height: heightOf(m, ask), wheelbase: m.donor.wheelbase }),
      grips: (['dry', 'wet', 'snow'] as const).map(surface => maybe({ grip: m.donor.grip[surface] })),
    }
  },
  answer: (k, make): MotorBraking => {
    const pulls = k.names.map((name, i) => {
      const e = k.envelopes[i]?.e as unknown as Envelope
      return {
        axle: e.axle === 'front' ? ('front' as const) : ('rear' as const),
        pull: pullOf(make, name, e, k.gears[i] as Gears, k.share as Value, k.radius),
      }
    })
    const at = (axle: Axle): readonly Value[] => pulls.filter(p => p.axle === axle).map(p => p.pull),
      each = pulls.map(p => p.pull)
    const loads: [string, Kerbed | Gaps][] = [
      [AT_KERB, { mass: k.kerb.kerb, front: k.kerb.front, rear: k.kerb.rear }],
      ...k.cases.map((c, i): [string, Kerbed | Gaps] => [
        k.caseNames[i] as string,
        isGaps(c) ? c : (c as unknown as { laden: Laden }).laden,
      ]),
    ]
    const cases = Object.fromEntries(
      loads.map(([item, l]): [string, Braking | Gaps] => [
        item,
        isGaps(l)
          ? l
          : make.all(
              '',
              motorsBraking,
              { each, mass: l.mass },
              {
                item,
                labels: { braking: `Motors over weight, ${item}`, deceleration: `Deceleration by the motors, ${item}` },
              },
            ).figures,
      ]),
    )
    const known = loads.flatMap(([name, l]) => (isGaps(l) ? [] : [{ name, ...l }]))
    return {
      each,
      frontShare: make.work(
        'front-share',
        motorsFrontShare,
        { front: at('front'), rear: at('rear') },
        { label: 'Share of the motors’ braking at the front' },
      ),
      cases,
      worst: isGaps(k.stand)
        ? {}
        : Object.fromEntries(
            (['front', 'rear'] as const).flatMap(axle => {
              const own = at(axle)
              return own.length === 0 ? [] : [[axle, worst(make, axle, own, each, known, k.stand as Stand, k.grips as Grips)]]
            }),
          ),
    }
  },
})
type Kerbed = { readonly mass: Value; readonly front: Value; readonly rear: Value }
type Gears = readonly { readonly gear: string; readonly steps: readonly Value[] }[] | null
type Stand = { readonly height: Value; readonly wheelbase: Value }
type Grips = readonly ({ readonly grip: Value } | Gaps)[]

/** In the shortest gear where the box is shifted. */
function pullOf(make: Maker, item: string, e: Envelope, gears: Gears, share: Value, radius: Value): Figure {
  const all = (gears ?? []).map(g =>
    make.work('ratio', totalRatio, { steps: g.steps }, { item: `${item} ${g.gear}`, label: `Total ratio of ${item} in ${g.gear}` }),
  )
  const ratio = all.reduce<Value>((a, b) => (b.value > a.value ? b : a), all[0] ?? e.ratio)
  return make.work(
    'pull',
    recoveryPull,
    { share, torque: e.peakTorque, ratio, efficiency: isAssumed(e.efficiency) ? WORST_DRIVELINE : e.efficiency, radius },
    { item, label: `Braking pull of ${item} at most` },
  )
}

const SURFACES = ['dry', 'wet', 'snow'] as const
function worst(
  make: Maker,
  axle: Axle,
  own: readonly Value[],
  each: readonly Value[],
  loads: readonly (Kerbed & { readonly name: string })[],
  { height, wheelbase }: Stand,
  grips: Grips,
) {
  const sum = (key: string, forces: readonly Value[]): Value =>
    forces.length === 1
      ? (forces[0] as Value)
      : make.work(key, pullTogether, { forces }, { item: axle, label: `Braking pull together, ${axle}` })
  const here = sum('own', own),
    all = sum('all', each)
  const needed = loads.map(l => ({
    load: l.name,
    figure: make.work(
      'grip',
      recoveryGrip,
      {
        own: here,
        all,
        axle: l[axle],
        height: axle === 'front' && isAssumed(height) ? NO_HEIGHT : height,
        wheelbase,
        gravity: GRAVITY,
        sign: SIDE[axle],
      },
      { item: `${l.name} ${axle}`, label: `Grip the motors need, ${axle} axle, ${l.name}` },
    ),
  }))
  const most = needed.reduce((a, b) => (b.figure.value > a.figure.value ? b : a))
  const left = Object.fromEntries(
    SURFACES.flatMap((surface, i): [string, Figure][] => {
      const g = grips[i] as { grip: Value } | Gaps
      return isGaps(g)
        ? []
        : [
            [
              surface,
              make.work(
                'left',
                pullLeft,
                { grip: g.grip, needed: most.figure },
                { item: `${axle} ${surface}`, label: `Share of recovery the road lets through, ${axle} axle, ${surface}` },
              ),
            ],
          ]
    }),
  )
  return { needed: most.figure, load: most.load, left }
}
