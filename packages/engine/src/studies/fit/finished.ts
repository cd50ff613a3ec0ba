import { massGained } from '../../vehicle/corner-masses.ts'
import { massByLedger, otherAxle, rearAxleByLedger } from '../../vehicle/mass-and-axles.ts'
import { offTheLedger } from '../../vehicle/mass-on-wheels.ts'
import type { Figure, Value } from '../../working/value.ts'
import { gone, type Kerb, leaving, ledger } from '../donor/ledger.ts'
import { type Axles, axlesOf, axlesTogether } from '../donor/on-scales.ts'
import { stripped, weighed } from '../donor/weighed.ts'
import { from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { halfOf, isMeasured, knownAs } from './known-as.ts'
import { massLedger, type Thing } from './mass-ledger.ts'

/** One thing the scales say against what the ledger expects of it. */
export type Against = { readonly name: string; readonly weighed: Value; readonly expected: Value; readonly off: Figure }
export type Finished = {
  /** None where the car was not weighed. */
  readonly stripped: readonly Against[] | Gaps | null
  readonly against: readonly Against[] | Gaps | null
  /** Things of the ledger nobody has weighed, the widest first; what came out is weighed with the stripped car. */
  readonly unsure: readonly string[]
}

/** The car on the scales against its ledger, stripped and finished, and which masses of the ledger nobody has weighed yet. */
export const finished = study({
  id: 'finished',
  stage: 'fit',
  asks: 'Does the car weigh what was reckoned?',
  reads: (m, ask) => ({
    isStripped: m.fit.stripped.given,
    stripped: m.fit.stripped.given
      ? maybe({
          scales: from(ask(stripped), s => s.axles as Axles),
          donor: ask(weighed),
          wheelbase: m.donor.wheelbase,
          leaves: leaving(m),
        })
      : null,
    scales: m.fit.weighed.given ? maybe({ axles: axlesOf(m.fit.weighed), ledger: ask(ledger) }) : null,
    things: maybe(from(ask(massLedger), l => ({ all: l.things }))),
  }),
  answer: ({ isStripped, stripped: bare, scales, things }, make): Finished => {
    const all = isGaps(things) ? [] : (things.all as readonly Thing[]),
      unsure = notWeighed(all.filter(t => !isStripped || t.way === 'put in'))
    make.table('unsure', {
      label: 'Masses nobody has weighed yet, the widest first',
      columns: [
        { key: 'mass', label: 'mass', unit: 'kg' },
        { key: 'known', label: 'known as' },
      ],
      rows: unsure.map(({ name, mass }) => ({ name, cells: { mass, known: knownAs(mass) } })),
    })
    return {
      stripped:
        bare === null || isGaps(bare) ? bare : held(make, 'stripped', bare.scales as Axles, withoutRemoved(make, bare as unknown as Bare)),
      against:
        scales === null || isGaps(scales)
          ? scales
          : held(make, 'finished', axlesTogether(make, scales.axles, 'Finished car'), (scales.ledger as Kerb).byParts),
      unsure: unsure.map(u => u.name),
    }
  },
})

type Bare = { readonly donor: Axles; readonly wheelbase: Value; readonly leaves: Parameters<typeof gone>[1] }
/** The donor car less what came out, by the ledger. */
function withoutRemoved(make: Maker, { donor: { front, rear }, wheelbase, leaves }: Bare): Axles {
  const outs = gone(make, leaves),
    removed = outs.map(o => o.mass),
    all = make.work('stripped', massByLedger, { front, rear, added: [], removed }, { label: 'Stripped car by the ledger' })
  const atRear = make.work(
    'stripped-rear',
    rearAxleByLedger,
    { rear, added: [], addedX: [], removed, removedX: outs.map(o => o.x), wheelbase },
    { label: 'Stripped car, rear axle by the ledger' },
  )
  return {
    total: all,
    rear: atRear,
    front: make.work('stripped-front', otherAxle, { total: all, one: atRear }, { label: 'Stripped car, front axle by the ledger' }),
  }
}

/** By the width of their ±, then by mass: what moves the sum most comes first. */
const notWeighed = (things: readonly Thing[]): readonly Thing[] =>
  things
    .filter(t => !isMeasured(t.mass))
    .map(t => ({ ...t, half: halfOf(t.mass) }))
    .sort((a, b) => b.half - a.half || b.mass.value - a.mass.value || (a.name < b.name ? -1 : 1))

function held(make: Maker, car: 'stripped' | 'finished', scales: Axles, ledger: Axles): readonly Against[] {
  const rows = (
    [
      ['whole car', 'total'],
      ['front axle', 'front'],
      ['rear axle', 'rear'],
    ] as const
  ).map(([what, at]) => {
    const name = car === 'finished' ? what : `stripped, ${what}`,
      [now, before] = [scales[at], ledger[at]]
    return {
      name,
      weighed: now,
      expected: before,
      more: make.work('more', massGained, { now, before }, { item: name, label: `Heavier than the ledger, ${name}` }),
      off: make.work('off', offTheLedger, { weighed: now, expected: before }, { item: name, label: `Weighed, off the ledger, ${name}` }),
    }
  })
  make.table(car === 'finished' ? 'against' : 'stripped-against', {
    label: `The ${car} car on the scales against its ledger`,
    columns: [
      { key: 'weighed', label: 'on the scales', unit: 'kg' },
      { key: 'expected', label: 'by the ledger', unit: 'kg' },
      { key: 'more', label: 'heavier by', unit: 'kg' },
      { key: 'off', label: 'off by', unit: '1', shows: 'share' },
    ],
    rows: rows.map(({ name, ...cells }) => ({ name, cells })),
  })
  return rows.map(({ name, weighed, expected, off }) => ({ name, weighed, expected, off }))
}
