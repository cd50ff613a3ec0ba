import { parkingPrint, pedalForBraking } from '../../brakes/parking-slope.ts'
import { efficiencyAtMass, rollerPrint } from '../../brakes/roller-print.ts'
import type { BrakePrint } from '../../model/brakes.ts'
import { type Figure, type Gap, standard, type Value } from '../../working/value.ts'
import { ledger } from '../donor/ledger.ts'
import { type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'

const MOT = { work: 'uk-mot', place: '1.2.2, service brake of a car' } as const
/** Least brake efficiency of a car in the yearly test, by the day it was first used. */
const LEAST_SERVICE = {
  old: {
    ...standard('brake-efficiency.before-2010', 'Least brake efficiency, first used before September 2010', 'z_a', 0.5, '1', MOT),
    shows: 'share',
  },
  young: {
    ...standard('brake-efficiency.from-2010', 'Least brake efficiency, first used from September 2010', 'z_a', 0.58, '1', MOT),
    shows: 'share',
  },
} as const
/** A year alone counts as its end: the stricter limit. */
export const leastService = (firstUsed: string): Value => (`${firstUsed}-12` >= '2010-09' ? LEAST_SERVICE.young : LEAST_SERVICE.old)

/** No print yet: it says what of the donor can be had only while its engine runs. */
export const NO_PRINT: Gap = {
  gap: true,
  path: 'brakes.prints',
  label: 'print of a roller brake tester',
  until: 'before the engine comes out',
  measure: { tool: 'roller brake tester', accuracy: '± 3 %', minutes: 20 },
  why: 'missing',
}

export type Printed = {
  readonly when: 'before' | 'after'
  readonly mass: Value
  readonly efficiency: Figure
  readonly front: Figure
  readonly rear: Figure
  readonly split: Figure
  /** The same brakes at the same pedal under the finished car at kerb. */
  readonly now: Figure | Gaps
  readonly parking: { readonly hold: Figure; readonly efficiency: Figure } | Gaps
}

const printReads = (p: BrakePrint) => ({
  when: p.when,
  mass: p.mass,
  frontLeft: p.frontLeft,
  frontRight: p.frontRight,
  rearLeft: p.rearLeft,
  rearRight: p.rearRight,
})

/** What every print of the roller tester says, and what the same brakes would print under the finished car. */
export const prints = study({
  id: 'print',
  stage: 'brakes & steering',
  asks: 'What did the roller tester print, and what would it print of the finished car?',
  reads: (m, ask) => ({
    names: Object.keys(m.brakes.prints),
    prints: Object.values(m.brakes.prints).map(p => maybe(printReads(p))),
    pedals: Object.values(m.brakes.prints).map(p => maybe({ force: p.pedalForce, firstUsed: m.donor.firstRegistered })),
    parking: Object.values(m.brakes.prints).map(p => maybe({ left: p.parkingLeft, right: p.parkingRight, mass: p.mass })),
    now: maybe({ kerb: ask(ledger), firstUsed: m.donor.firstRegistered }),
  }),
  answer: (k, make): { prints: Readonly<Record<string, Printed | Gaps>> } => {
    const all = Object.fromEntries(
      k.prints.map((p, i): [string, Printed | Gaps] => {
        const item = k.names[i] as string
        if (isGaps(p)) return [item, p]
        const { when, ...wheels } = p,
          { figures } = make.all('', rollerPrint, wheels, { item, labels: labelled(item) })
        const pedal = k.pedals[i] as { force: Value; firstUsed: { value: string } } | Gaps
        if (!isGaps(pedal))
          make.work(
            'pedal',
            pedalForBraking,
            { printed: pedal.force, braking: figures.efficiency, asked: leastService(pedal.firstUsed.value) },
            { item, label: `Pedal force for the least efficiency, ${item}` },
          )
        return [
          item,
          {
            when: when.value,
            mass: p.mass,
            ...figures,
            now: isGaps(k.now) ? k.now : underTheNewMass(make, item, { efficiency: figures.efficiency, mass: p.mass }, k.now as Now),
            parking: parked(make, item, k.parking[i] as Parked | Gaps),
          },
        ]
      }),
    )
    listed(make, all)
    return { prints: all }
  },
})

/** Prints side by side. */
function listed(make: Maker, all: Readonly<Record<string, Printed | Gaps>>): void {
  const share = (key: string, label: string) => ({ key, label, unit: '1', shows: 'share' })
  make.table('prints', {
    label: 'Prints of the roller tester',
    columns: [
      { key: 'when', label: 'taken' },
      share('efficiency', 'efficiency'),
      share('now', 'under the finished car'),
      share('front', 'front uneven by'),
      share('rear', 'rear uneven by'),
      share('split', 'share in front'),
      share('parking', 'parking brake'),
    ],
    rows: Object.entries(all).flatMap(([name, p]) =>
      isGaps(p)
        ? []
        : [
            {
              name,
              cells: {
                when: p.when,
                efficiency: p.efficiency,
                now: isGaps(p.now) ? undefined : p.now,
                front: p.front,
                rear: p.rear,
                split: p.split,
                parking: isGaps(p.parking) ? undefined : p.parking.efficiency,
              },
            },
          ],
    ),
  })
}

const labelled = (item: string) => ({
  efficiency: `Brake efficiency, ${item}`,
  front: `Unevenness of the front axle, ${item}`,
  rear: `Unevenness of the rear axle, ${item}`,
  split: `Share of the brake force at the front, ${item}`,
})
type Now = { readonly kerb: { readonly kerb: Value }; readonly firstUsed: { readonly value: string } }
function underTheNewMass(
  make: Maker,
  item: string,
  { efficiency, mass }: { efficiency: Value; mass: Value },
  { kerb, firstUsed }: Now,
): Figure {
  const { figures } = make.all(
    'now',
    efficiencyAtMass,
    { before: efficiency, massBefore: mass, mass: kerb.kerb, asked: leastService(firstUsed.value) },
    { item, labels: { efficiency: `Same brakes and pedal, finished car, ${item}`, force: `Brake force the finished car needs, ${item}` } },
  )
  return figures.efficiency
}
type Parked = { readonly left: Value; readonly right: Value; readonly mass: Value }
const parked = (make: Maker, item: string, p: Parked | Gaps): Printed['parking'] =>
  isGaps(p)
    ? p
    : make.all('parking', parkingPrint, p, {
        item,
        labels: { hold: `Hold of the parking brake, ${item}`, efficiency: `Parking brake over weight, ${item}` },
      }).figures

/** The print that counts: of the finished car where there is one, else of the donor. Of several the last by name, so that their order in the file says nothing. */
export function newest(all: Readonly<Record<string, Printed | Gaps>>, has: (p: Printed) => boolean = () => true): Printed | undefined {
  const known = Object.keys(all)
    .sort()
    .flatMap(name => {
      const p = all[name] as Printed | Gaps
      return isGaps(p) || !has(p) ? [] : [p]
    })
  return known.findLast(p => p.when === 'after') ?? known.at(-1)
}
