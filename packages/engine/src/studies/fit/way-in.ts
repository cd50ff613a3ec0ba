import { CLEARANCE_HABITS } from '../../fitting/clearance-habits.ts'
import {
  airOnTheWay,
  airPastBox,
  airPastTube,
  airToRoomOnTheWay,
  airToShaftOnTheWay,
  liftedByHand,
  PER_PERSON,
  roomBox,
  type Way,
} from '../../fitting/way-in.ts'
import { checkPlace } from '../../fitting/vector.ts'
import type { Body, KeepOut, MovingBody } from '../../model/fit.ts'
import type { Model } from '../../model/model.ts'
import { type Field, type Figure, isGap, type Value } from '../../working/value.ts'
import { type Kerb, ledger } from '../donor/ledger.ts'
import { type Ask, from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { type FreeRoom, type FreeShaft, keptFreeOf, readsOf } from './kept-free.ts'
import { massOf, type PlacedShape, places, shapesOf } from './places.ts'
import { orderOf } from './way-in-order.ts'

/** One part on its way in. */
export type Passage = {
  readonly name: string
  readonly way: Value<Way>
  readonly mass: Value | Gaps
  /** What stays in the car or is kept free, and comes nearest to the way. */
  readonly beside: { readonly what: string; readonly air: Figure } | undefined
  /** Parts that stand in its way once they are in: they go in after it. */
  readonly before: readonly string[]
  /** It stands in the way of a part that stands in its own: neither can go in first. */
  readonly circle: boolean
}
export type WaysIn = {
  readonly passages: readonly Passage[]
  /** Parts whose way is said, but not where they stand or how large they are. */
  readonly open: Readonly<Record<string, Gaps>>
  readonly byHand: Figure | undefined
}

type Moving = readonly [string, MovingBody]
const isMoving = (entry: readonly [string, Body]): entry is Moving => entry[1].kind !== 'stays in the car'
/** Parts that say which way they go in. */
export const partsWithWay = (m: Model): readonly Moving[] =>
  shapesOf(m)
    .filter(isMoving)
    .filter(([, b]) => !isGap(b.wayIn))

/** What must stay free but is no thing that stands there. */
const AIR: readonly KeepOut['kind'][] = ['crush zone']

/** Mass of what a shape stands for; of a battery box with its modules. */
function massIn(m: Model, ask: Ask, body: Body): Field | Value | Gaps {
  if (body.kind !== 'battery box') return massOf(m, body)
  const boxes = Object.keys(m.pack.boxes),
    at = isGap(body.box) ? -1 : boxes.indexOf(body.box.value)
  return from(ask(ledger), k => (k as Kerb).added.at(at - boxes.length) ?? { gaps: [] })
}

/** Which way each part goes in, what it passes, which parts wait for it, and who lifts it. */
export const waysIn = study({
  id: 'way-in',
  stage: 'fit',
  asks: 'Can each part be brought in, in which order, and who lifts it?',
  reads: (m, ask) => {
    const answer = ask(places),
      { people } = m.fit.lifting
    return {
      parts: partsWithWay(m).map(([name, b]) => ({ name, way: b.wayIn, mass: maybe(massIn(m, ask, b)) })),
      shapes: shapesOf(m).map(([name]) => ({ name, is: maybe({ shape: from(answer, a => a.shapes[name] as PlacedShape | Gaps) }) })),
      kept: keptFreeOf(m).flatMap(([name, k]) => (AIR.includes(k.kind) ? [] : [{ name, is: maybe(readsOf(k)) }])),
      people: isGap(people) ? null : people,
    }
  },
  answer: ({ parts, shapes, kept, people }, make): WaysIn => {
    const all = shapes.flatMap(s => (isGaps(s.is) ? [] : [s.is.shape as PlacedShape])),
      free = kept.flatMap(k => (isGaps(k.is) ? [] : [{ name: k.name, is: k.is as FreeRoom | FreeShaft }])),
      open: Record<string, Gaps> = {}
    const going = parts.flatMap(p => {
      const shape = all.find(s => s.name === p.name),
        said = shapes.find(s => s.name === p.name)?.is
      if (!shape && said && isGaps(said)) open[p.name] = said
      return shape ? [{ ...p, way: p.way as Value<Way>, shape }] : []
    })
    const inTheWay = Object.fromEntries(going.map(g => [g.name, blocking(g, all)])),
      { place, circles } = orderOf(inTheWay)
    const passages = going.map(
      (g): Passage => ({
        name: g.name,
        way: g.way,
        mass: g.mass as Value | Gaps,
        beside: nearest(make, g, all, free),
        before: inTheWay[g.name] ?? [],
        circle: circles.has(g.name),
      }),
    )
    const byHand = people === null ? undefined : make.work('by-hand', liftedByHand, { people, each: PER_PERSON })
    table(make, passages, place)
    return { passages, open, byHand }
  },
})

type Going = { readonly name: string; readonly way: Value<Way>; readonly shape: PlacedShape }
/** Air wanted on each side on the way in; out of its seat by as much, a part has left what it stood on. */
export const SEAT = CLEARANCE_HABITS.wayIn
/** An overlap within rounding only touches. */
const TOUCH = -1e-6

/** Parts that go in as well and stand where this one passes. */
const blocking = ({ name, way, shape }: Going, all: readonly PlacedShape[]): readonly string[] =>
  all
    .filter(o => o.name !== name && o.kind !== 'stays in the car' && airPastBox(shape.box, o.box, way.value, SEAT.value) < TOUCH)
    .map(o => o.name)

type Free = { readonly name: string; readonly is: FreeRoom | FreeShaft }
const plain = (three: readonly Value[]): readonly number[] => three.map(v => v.value)

/** Of all that stays, what comes nearest to the way. */
function nearest(make: Maker, { name, way, shape }: Going, all: readonly PlacedShape[], free: readonly Free[]): Passage['beside'] {
  const { box, place, sides, turns } = shape,
    w = way.value,
    part = { way, from: SEAT, place, sides, turns }
  const options = (what: string) => ({ item: name, label: `${name} ${w}: air to ${what}` })
  const candidates = [
    ...all
      .filter(o => o.kind === 'stays in the car')
      .map(o => ({
        what: o.name,
        air: airPastBox(box, o.box, w, SEAT.value),
        figure: () => make.work('air', airOnTheWay, { ...part, place2: o.place, sides2: o.sides, turns2: o.turns }, options(o.name)),
      })),
    ...free.map(({ name: what, is }) =>
      is.is === 'room'
        ? {
            what,
            air: airPastBox(box, roomBox(plain(is.low), plain(is.high)), w, SEAT.value),
            figure: () => make.work('air', airToRoomOnTheWay, { ...part, low: is.low, high: is.high }, options(what)),
          }
        : {
            what,
            air: airPastTube(
              box,
              [checkPlace('shaft', 'inner joint', plain(is.from)), checkPlace('shaft', 'outer joint', plain(is.to))],
              is.diameter.value,
              w,
              SEAT.value,
            ),
            figure: () =>
              make.work('air', airToShaftOnTheWay, { ...part, inner: is.from, outer: is.to, diameter: is.diameter }, options(what)),
          },
    ),
  ]
  const least = candidates.reduce<(typeof candidates)[number] | undefined>((a, b) => (a === undefined || b.air < a.air ? b : a), undefined)
  return least && { what: least.what, air: least.figure() }
}

function table(make: Maker, passages: readonly Passage[], place: ReadonlyMap<string, number>): void {
  make.table('ways', {
    label: 'How each part goes in',
    columns: [
      { key: 'order', label: 'at the earliest as number' },
      { key: 'way', label: 'way' },
      { key: 'mass', label: 'mass', unit: 'kg' },
      { key: 'beside', label: 'nearest that stays' },
      { key: 'air', label: 'air to it', unit: 'm', shows: 'length' },
      { key: 'before', label: 'goes in before' },
    ],
    rows: passages.map(({ name, way, mass, beside, before }) => ({
      name,
      cells: {
        order: place.get(name),
        way,
        mass: isGaps(mass) ? undefined : mass,
        beside: beside?.what,
        air: beside?.air,
        before: before.join(', '),
      },
    })),
  })
}
