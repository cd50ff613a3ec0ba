import { lockCrossing } from '../../brakes/adhesion-utilisation.ts'
import { valveShares } from '../../brakes/force-per-pressure.ts'
import { leastAboveLine, leastLead } from '../../brakes/over-range.ts'
import { NO_VALVE } from '../../brakes/utilisation-curve.ts'
import { rearShare } from '../../vehicle/grip.ts'
import { weightOf } from '../../vehicle/weight.ts'
import { type Figure, standard, type Value } from '../../working/value.ts'
import { ledger } from '../donor/ledger.ts'
import { type Laden, loadCases } from '../donor/load-cases.ts'
import { heightOf } from '../donor/situation.ts'
import { from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { drawForces, drawGrip } from './brake-curves.ts'
import { AT_KERB, type MotorBraking, motorBraking } from './motor-braking.ts'
import { type Split, split } from './split.ts'

const NO_MOTORS = standard('no-motor-braking', 'motors do not brake', 'z_m', 0, '1', {
  work: 'definition',
  place: 'battery full or cold, or recovery off',
})
/** A car’s friction brakes under one load, as every sum on locking takes them. */
export type Under = {
  readonly mass: Value
  readonly rearShare: Figure
  readonly below: Value
  readonly above: Value
  readonly knee: Value
  readonly height: Value
  readonly wheelbase: Value
}
export type Judged = { readonly lead: Figure; readonly at: Figure; readonly room: Figure }
export type Utilised = {
  readonly under: Under
  /** Braking at which both axles lock together, where no valve bends the line. */
  readonly crossing: Figure | undefined
  readonly friction: Judged
  readonly recovering: Judged | Gaps
}

/** Which axle locks first, and whether the car brakes hard enough before it does, under every load, by friction alone and with the motors at their strongest. */
export const utilisation = study({
  id: 'utilisation',
  stage: 'brakes & steering',
  asks: 'Which axle locks first, under every load, with and without braking by the motors?',
  reads: (m, ask) => {
    const loads = ask(loadCases)
    return {
      split: ask(split),
      kerb: ask(ledger),
      names: Object.keys(m.brief.loads),
      cases: Object.keys(m.brief.loads).map(name => maybe(from(loads, l => ({ laden: l.cases[name] as Laden | Gaps })))),
      height: heightOf(m, ask),
      wheelbase: m.donor.wheelbase,
      motors: maybe(ask(motorBraking)),
      grips: (['dry', 'wet', 'snow'] as const).map(surface => maybe({ surface: [surface], grip: m.donor.grip[surface] })),
    }
  },
  answer: (k, make): { cases: Readonly<Record<string, Utilised | Gaps>> } => {
    const loads: [string, { mass: Value; rear: Value } | Gaps][] = [
      [AT_KERB, { mass: k.kerb.kerb, rear: k.kerb.rear }],
      ...k.cases.map((c, i): [string, Laden | Gaps] => [k.names[i] as string, isGaps(c) ? c : (c as unknown as { laden: Laden }).laden]),
    ]
    const motors = k.motors as MotorBraking | Gaps
    const cases = Object.fromEntries(
      loads.map(([item, l]): [string, Utilised | Gaps] => [
        item,
        isGaps(l) ? l : utilised(make, item, under(make, item, k.split as Split, l, k), motors),
      ]),
    )
    for (const [item, c] of Object.entries(cases)) if (!isGaps(c)) drawGrip(make, item, c, motors)
    const grips = k.grips.flatMap(g =>
      isGaps(g) ? [] : [{ surface: (g.surface as unknown as string[])[0] as string, grip: (g.grip as Value).value }],
    )
    drawForces(make, cases, motors, grips)
    summary(make, cases)
    return { cases }
  },
})

type Stand = { readonly height: Value; readonly wheelbase: Value }
function under(make: Maker, item: string, s: Split, { mass, rear }: { mass: Value; rear: Value }, { height, wheelbase }: Stand): Under {
  const stand = {
    mass,
    rearShare: make.work('rear-share', rearShare, { rear, total: mass }, { item, label: `Share on the rear axle, ${item}` }),
    height,
    wheelbase,
  }
  if (s.valve === null) return { ...stand, below: s.front, above: s.front, knee: NO_VALVE }
  const weight = make.work('weight', weightOf, { mass }, { item, label: `Weight, ${item}` })
  const { below, above, knee } = make.all(
    'valve',
    valveShares,
    { ...s.valve, weight },
    {
      item,
      labels: {
        below: `Share at the front below the knee, ${item}`,
        above: `Share of what is added above it, ${item}`,
        knee: `Braking at the knee, ${item}`,
      },
    },
  ).figures
  return { ...stand, below, above, knee }
}

function utilised(make: Maker, item: string, u: Under, motors: MotorBraking | Gaps): Utilised {
  const { mass: _, ...brakes } = u
  const judged = (key: string, said: string, braking: Value, front: Value): Judged => {
    const takes = { ...brakes, motors: braking, motorsFront: front },
      order = make.all(`${key}order`, leastLead, takes, {
        item,
        labels: { lead: `Lead of the front axle${said}, ${item}`, at: `Braking that decides it${said}, ${item}` },
      }).figures,
      line = make.all(`${key}line`, leastAboveLine, takes, {
        item,
        labels: { room: `Braking above the line${said}, ${item}`, at: `Braking where it is least${said}, ${item}` },
      }).figures
    return { lead: order.lead, at: order.at, room: line.room }
  }
  const braking = isGaps(motors) ? motors : (motors.cases[item] ?? ({ gaps: [] } as Gaps))
  return {
    under: u,
    crossing:
      u.knee === NO_VALVE
        ? make.work(
            'crossing',
            lockCrossing,
            { front: u.below, rearShare: u.rearShare, height: u.height, wheelbase: u.wheelbase },
            { item, label: `Both axles lock together at, ${item}` },
          )
        : undefined,
    friction: judged('', '', NO_MOTORS, NO_MOTORS),
    recovering: isGaps(braking) ? braking : judged('recovering-', ', motors braking', braking.braking, (motors as MotorBraking).frontShare),
  }
}

/** What decides under each load, beside one another. */
function summary(make: Maker, cases: Readonly<Record<string, Utilised | Gaps>>): void {
  const ratio = (key: string, label: string) => ({ key, label, unit: '1', shows: 'ratio' })
  make.table('loads', {
    label: 'Order of locking and least braking under each load',
    columns: [
      { key: 'rear', label: 'share on the rear axle', unit: '1', shows: 'share' },
      ratio('lead', 'lead of the front axle'),
      ratio('lead-motors', 'lead, motors braking'),
      ratio('room', 'above the line'),
      ratio('room-motors', 'above the line, motors braking'),
    ],
    rows: Object.entries(cases).flatMap(([name, c]) => {
      if (isGaps(c)) return []
      const with_ = isGaps(c.recovering) ? undefined : c.recovering
      return [
        {
          name,
          cells: {
            rear: c.under.rearShare,
            lead: c.friction.lead,
            'lead-motors': with_?.lead,
            room: c.friction.room,
            'room-motors': with_?.room,
          },
        },
      ]
    }),
  })
}
