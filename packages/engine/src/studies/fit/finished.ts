import { massGained } from '../../vehicle/corner-masses.ts'
import { twoTogether } from '../../vehicle/mass-and-axles.ts'
import { offTheLedger } from '../../vehicle/mass-on-wheels.ts'
import type { Figure, Value } from '../../working/value.ts'
import { type Kerb, ledger } from '../donor/ledger.ts'
import { either, from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { halfOf, isMeasured, knownAs } from './known-as.ts'
import { massLedger, type Thing } from './mass-ledger.ts'

/** One thing the scales say against what the ledger expects of it. */
export type Against = { readonly name: string; readonly weighed: Value; readonly expected: Value; readonly off: Figure }
export type Finished = {
  /** None where the finished car was not weighed. */
  readonly against: readonly Against[] | Gaps | null
  /** Things of the ledger nobody has weighed, the widest first. */
  readonly unsure: readonly string[]
}

/** The finished car on the scales against its ledger, and which masses of the ledger nobody has weighed yet. */
export const finished = study({
  id: 'finished',
  stage: 'fit',
  asks: 'Does the finished car weigh what was reckoned?',
  reads: (m, ask) => {
    const w = m.fit.weighed
    return {
      scales: w.given
        ? maybe({
            front: either(w.front, { left: w.frontLeft, right: w.frontRight }),
            rear: either(w.rear, { left: w.rearLeft, right: w.rearRight }),
            ledger: ask(ledger),
          })
        : null,
      things: maybe(from(ask(massLedger), l => ({ all: l.things }))),
    }
  },
  answer: ({ scales, things }, make): Finished => {
    const unsure = isGaps(things) ? [] : notWeighed(things.all as readonly Thing[])
    make.table('unsure', {
      label: 'Masses nobody has weighed yet, the widest first',
      columns: [
        { key: 'mass', label: 'mass', unit: 'kg' },
        { key: 'known', label: 'known as' },
      ],
      rows: unsure.map(({ name, mass }) => ({ name, cells: { mass, known: knownAs(mass) } })),
    })
    const names = unsure.map(u => u.name)
    if (scales === null || isGaps(scales)) return { against: scales, unsure: names }
    return { against: held(make, scales as unknown as Scales), unsure: names }
  },
})

/** By the width of their ±, then by mass: what moves the sum most comes first. */
const notWeighed = (things: readonly Thing[]): readonly Thing[] =>
  things
    .filter(t => !isMeasured(t.mass))
    .map(t => ({ ...t, half: halfOf(t.mass) }))
    .sort((a, b) => b.half - a.half || b.mass.value - a.mass.value || (a.name < b.name ? -1 : 1))

type Axle = Value | { readonly left: Value; readonly right: Value }
type Scales = { readonly front: Axle; readonly rear: Axle; readonly ledger: Kerb }
function held(make: Maker, { front, rear, ledger: { kerb, front: frontByLedger, rear: rearByLedger } }: Scales): readonly Against[] {
  const axle = (name: 'front' | 'rear', x: Axle): Value =>
    'left' in x ? make.work(name, twoTogether, { one: x.left, other: x.right }, { label: `Finished car, ${name} axle` }) : x
  const f = axle('front', front),
    r = axle('rear', rear),
    total = make.work('total', twoTogether, { one: f, other: r }, { label: 'Finished car as weighed' })
  const rows = [
    { name: 'whole car', weighed: total, expected: kerb },
    { name: 'front axle', weighed: f, expected: frontByLedger },
    { name: 'rear axle', weighed: r, expected: rearByLedger },
  ].map(({ name, weighed, expected }) => ({
    name,
    weighed,
    expected,
    more: make.work('more', massGained, { now: weighed, before: expected }, { item: name, label: `Heavier than the ledger, ${name}` }),
    off: make.work('off', offTheLedger, { weighed, expected }, { item: name, label: `Weighed, off the ledger, ${name}` }),
  }))
  make.table('against', {
    label: 'The finished car on the scales against its ledger',
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
