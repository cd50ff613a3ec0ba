import { modulesToMove, slideNeeded } from '../../vehicle/moving-mass.ts'
import type { Figure, Value } from '../../working/value.ts'
import { isGaps, type Maker, maybe, study } from '../study.ts'
import { ledger } from './ledger.ts'
import type { Rated } from './ratings.ts'
import { type Rooms, room } from './room.ts'

export type Move = { readonly from: string; readonly to: string; readonly modules: Figure; readonly leaves: number; readonly makes: number }
export type Relief = {
  /** The least move of modules between two boxes that brings every axle inside its rating in every load case. */
  readonly move: Move | undefined
  /** The shortest slide of a single box that would do the same. */
  readonly slide: { readonly box: string; readonly by: Figure } | undefined
}
type Overload = { readonly item: string; readonly rated: Exclude<Rated, 'total'>; readonly room: Figure }
type Room = { readonly front: number; readonly rear: number }

/** For each axle overloaded in a load case, the single move that mends it: some modules from one box to another, or one box slid along the car. */
export const moves = study({
  id: 'moves',
  stage: 'donor',
  asks: 'Which single move brings an overloaded axle inside its rating?',
  reads: (m, ask) => {
    const answer = ask(room)
    return {
      rooms: answer,
      plan:
        Object.keys(m.pack.boxes).length === 0
          ? null
          : maybe({
              wheelbase: m.donor.wheelbase,
              module: m.pack.module.mass,
              finished: ask(ledger),
              boxes: Object.entries(m.pack.boxes).map(([name, b]) => ({ name, modules: b.modules, x: b.x })),
            }),
    }
  },
  answer: ({ rooms, plan }, make): { relief: Readonly<Record<string, Relief>> } => {
    if (plan === null || isGaps(plan)) return { relief: {} }
    const cases = Object.entries(rooms.cases),
      left = cases.flatMap(([, r]) => roomOf(r))
    return { relief: Object.fromEntries(cases.flatMap(([name, r]) => overloads(name, r)).map(o => [o.item, relief(make, o, plan, left)])) }
  },
})

function overloads(name: string, rooms: Rooms): readonly Overload[] {
  return (['front axle', 'rear axle'] as const).flatMap(rated => {
    const r = rooms[rated]
    return isGaps(r) || r.room.value >= 0 ? [] : [{ item: `${name}, ${rated}`, rated, room: r.room }]
  })
}
function roomOf(rooms: Rooms): readonly Room[] {
  const front = rooms['front axle'],
    rear = rooms['rear axle']
  return isGaps(front) || isGaps(rear) ? [] : [{ front: front.room.value, rear: rear.room.value }]
}

type Plan = {
  readonly wheelbase: Value
  readonly module: Value
  readonly finished: { readonly added: readonly Value[] }
  readonly boxes: readonly { readonly name: string; readonly modules: Value; readonly x: Value }[]
}
function relief(make: Maker, { item, rated, room }: Overload, { wheelbase, module, finished, boxes }: Plan, left: readonly Room[]): Relief {
  const towards = rated === 'rear axle' ? -1 : 1
  /** Whether every axle stays inside in every load case once so many kilograms have gone from the front axle to the rear. */
  const inside = (toRear: number): boolean => left.every(r => r.rear - toRear >= 0 && r.front + toRear >= 0)
  const masses = finished.added.slice(-boxes.length)
  const slides = boxes.map((b, i) => ({
    box: b.name,
    by: make.work(
      'slide',
      slideNeeded,
      { room, wheelbase, box: masses[i] as Value },
      { item: `${item} ${b.name}`, label: `Slide of box ${b.name} that relieves the ${item}` },
    ),
  }))
  const candidates = boxes.flatMap(from =>
    boxes.flatMap(to => {
      if ((to.x.value - from.x.value) * towards <= 0) return []
      const n = modulesToMove({ room: room.value, wheelbase: wheelbase.value, module: module.value, from: from.x.value, to: to.x.value })
      const toRear = (n * module.value * (to.x.value - from.x.value)) / wheelbase.value
      return n <= from.modules.value && inside(toRear) ? [{ from, to, n, gain: Math.abs(toRear) }] : []
    }),
  )
  const best = candidates.reduce<(typeof candidates)[number] | undefined>(
    (a, b) => (a === undefined || b.n < a.n || (b.n === a.n && b.gain > a.gain) ? b : a),
    undefined,
  )
  return {
    slide: slides.reduce<(typeof slides)[number] | undefined>((a, b) => (a === undefined || b.by.value < a.by.value ? b : a), undefined),
    move: best && {
      from: best.from.name,
      to: best.to.name,
      leaves: best.from.modules.value - best.n,
      makes: best.to.modules.value + best.n,
      modules: make.work(
        'modules',
        modulesToMove,
        { room, wheelbase, module, from: best.from.x, to: best.to.x },
        { item, label: `Modules to move from ${best.from.name} to ${best.to.name} for the ${item}` },
      ),
    },
  }
}
