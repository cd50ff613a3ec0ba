import type { Model } from '../../model/model.ts'
import { massesTogether, massOnAxles, massOnSides } from '../../vehicle/mass-on-wheels.ts'
import type { Field, Figure, Value } from '../../working/value.ts'
import { added, addedNames, addedPlaces, type Kerb, ledger, removedNames, removedPlaces } from '../donor/ledger.ts'
import type { Axles } from '../donor/on-scales.ts'
import { stripped, weighed } from '../donor/weighed.ts'
import { type Ask, from, type Gaps, isGaps, type Maker, maybe, study, type Table } from '../study.ts'
import { knownAs } from './known-as.ts'

type Way = 'taken out' | 'put in'
type Place = { readonly x: Field; readonly y: Field; readonly z: Field }
type Listed = { readonly name: string; readonly way: Way; readonly mass: Field | Value | Gaps; readonly place: Place }
export type Thing = { readonly name: string; readonly way: Way; readonly mass: Value }
type Sums = { readonly mass: Figure; readonly front: Figure; readonly rear: Figure; readonly left?: Figure; readonly right?: Figure }

/** Everything of the ledger by a name of its own; what the file states is read where it stands, so that one gap does not hide the rest. */
export function listedThings(m: Model, ask: Ask): readonly Listed[] {
  const answer = ask(ledger),
    typedIn = added(m).map(i => i.mass),
    typedOut = Object.values(m.donor.removed).map(i => i.mass)
  const list = (way: Way, names: readonly string[], places: readonly Place[], typed: readonly Field[], of: (k: Kerb) => readonly Value[]) =>
    names.map((name, i): Listed => {
      const mass = typed[i] ?? from(answer, k => of(k as Kerb)[i] ?? { gaps: [] })
      return { name: `${name}, ${way === 'put in' ? 'in' : 'out'}`, way, mass, place: places[i] as Place }
    })
  const all = [
    ...list('taken out', removedNames(m), removedPlaces(m), typedOut, k => k.removed),
    ...list('put in', addedNames(m, ask), addedPlaces(m, ask), typedIn, k => k.added),
  ]
  // Two things of one name would be one row: the later one is numbered.
  return all.map((t, i) => {
    const before = all.slice(0, i).filter(o => o.name === t.name).length
    return before === 0 ? t : { ...t, name: `${t.name} ${before + 1}` }
  })
}

/** Every thing taken out and put in with its mass, its place, what it puts on axles and sides, and how it is known. */
export const massLedger = study({
  id: 'mass-ledger',
  stage: 'fit',
  asks: 'What came out and what went in, where, and how is each mass known?',
  reads: (m, ask) => {
    const { wheelbase, trackFront, trackRear } = m.donor
    return {
      things: listedThings(m, ask).map(({ name, way, mass, place: { x, y, z } }) => ({
        name,
        way,
        mass: maybe(mass),
        place: [maybe(x), maybe(y), maybe(z)],
        axles: maybe({ mass, x, wheelbase }),
        sides: maybe({ mass, x, y, wheelbase, trackFront, trackRear }),
      })),
      weighed: maybe(ask(weighed)),
      stripped: maybe(from(ask(stripped), s => s.axles ?? { gaps: [] })),
      finished: maybe(ask(ledger)),
    }
  },
  answer: ({ things, weighed: donor, stripped: bare, finished }, make): { readonly things: readonly Thing[] } => {
    const rows = things.map(t => {
      const axles = isGaps(t.axles)
        ? undefined
        : make.all('axle', massOnAxles, t.axles as Inputs<'mass' | 'x' | 'wheelbase'>, {
            item: t.name,
            labels: { front: `${t.name}: on the front axle`, rear: `${t.name}: on the rear axle` },
          }).figures
      const sides = isGaps(t.sides)
        ? undefined
        : make.all('side', massOnSides, t.sides as Inputs<'mass' | 'x' | 'y' | 'wheelbase' | 'trackFront' | 'trackRear'>, {
            item: t.name,
            labels: { left: `${t.name}: on the left wheels`, right: `${t.name}: on the right wheels` },
          }).figures
      const [x, y, z] = t.place.map(p => (isGaps(p) ? undefined : (p as Value))),
        mass = isGaps(t.mass) ? undefined : (t.mass as Value)
      return {
        name: t.name,
        way: t.way,
        mass,
        axles,
        cells: { way: t.way, mass, x, y, z, ...axles, ...sides, known: mass && knownAs(mass) },
      }
    })
    const sums = (['taken out', 'put in'] as const).flatMap(way => {
      const sum = together(
        make,
        way,
        rows.filter(r => r.way === way).map(r => r.cells),
      )
      return sum ? [{ name: `all ${way}`, cells: { way: 'sum', ...sum } }] : []
    })
    make.table('things', {
      label: 'Ledger: what came out and what went in',
      columns: COLUMNS,
      rows: [
        ...(isGaps(donor) ? [] : [{ name: 'donor as weighed', cells: { way: 'before', ...byAxles(donor.total, donor) } }]),
        ...(isGaps(bare) ? [] : [{ name: 'stripped as weighed', cells: { way: 'between', ...byAxles(bare.total, bare) } }]),
        ...rows.map(({ name, cells }) => ({ name, cells })),
        ...sums,
        ...(isGaps(finished)
          ? []
          : [
              ...((finished as Kerb).fromScales ? [whole('finished by the parts alone', (finished as Kerb).byParts)] : []),
              whole('finished at kerb', { ...(finished as Kerb), total: (finished as Kerb).kerb }),
            ]),
      ],
    })
    return { things: rows.flatMap(({ name, way, mass }) => (mass ? [{ name, way, mass }] : [])) }
  },
})

type Inputs<K extends string> = { readonly [P in K]: Value }
type Cells = Readonly<Record<string, Value | string | undefined>>
const byAxles = (mass: Value, { front, rear }: { readonly front: Value; readonly rear: Value }): Cells => ({
  mass,
  front,
  rear,
  known: knownAs(mass),
})

const whole = (name: string, axles: Axles) => ({ name, cells: { way: 'after', ...byAxles(axles.total, axles) } })

const kg = (key: string, label: string): Table['columns'][number] => ({ key, label, unit: 'kg' })
const at = (key: string, label: string): Table['columns'][number] => ({ key, label, unit: 'm', shows: 'length' })
const COLUMNS: Table['columns'] = [
  { key: 'way', label: '' },
  kg('mass', 'mass'),
  at('x', 'behind the front axle'),
  at('y', 'to the right'),
  at('z', 'above the ground'),
  kg('front', 'front axle'),
  kg('rear', 'rear axle'),
  kg('left', 'left wheels'),
  kg('right', 'right wheels'),
  { key: 'known', label: 'known as' },
]

/** Sums of one way, of each column in which no row is missing. */
function together(make: Maker, way: Way, rows: readonly Cells[]): Partial<Sums> | undefined {
  if (rows.length === 0) return undefined
  const named = {
    mass: 'mass',
    front: 'on the front axle',
    rear: 'on the rear axle',
    left: 'on the left wheels',
    right: 'on the right wheels',
  }
  return Object.fromEntries(
    Object.entries(named).flatMap(([key, words]) => {
      const masses = rows.map(r => r[key])
      if (masses.some(v => v === undefined)) return []
      return [[key, make.work(`sum-${key}`, massesTogether, { masses: masses as Value[] }, { item: way, label: `All ${way}: ${words}` })]]
    }),
  )
}
