import { roomTo } from '../../vehicle/laden.ts'
import type { Figure, Value } from '../../working/value.ts'
import { from, type Gaps, isGaps, maybe, once, study } from '../study.ts'
import { ledger } from './ledger.ts'
import { type Laden, loadCases } from './load-cases.ts'
import { RATED, type Rated, ratingsOf } from './ratings.ts'

export type Rooms = Readonly<Record<Rated, { readonly mass: Value; readonly rating: Value; readonly room: Figure } | Gaps>>
export const massOf = (laden: Laden, rated: Rated): Value =>
  rated === 'total' ? laden.mass : rated === 'front axle' ? laden.front : laden.rear

/** What is left to each rating in each load case, and what the empty car may still take aboard. */
export const room = study({
  id: 'room',
  stage: 'donor',
  asks: 'How much may it still carry, on each axle and in all?',
  reads: (m, ask) => {
    const loads = ask(loadCases),
      names = Object.keys(m.brief.loads),
      ratings = ratingsOf(m)
    return {
      names,
      cases: names.map(name => maybe({ laden: from(loads, l => l.cases[name] as Laden | Gaps) })),
      ratings: { total: maybe(ratings.total), 'front axle': maybe(ratings['front axle']), 'rear axle': maybe(ratings['rear axle']) },
      kerb: maybe(ask(ledger)),
    }
  },
  answer: ({ names, cases, ratings, kerb }, make): { payload: Figure | Gaps; cases: Readonly<Record<string, Rooms>> } => {
    const out: Record<string, Rooms> = {}
    for (const [i, c] of cases.entries()) {
      const item = names[i] as string
      out[item] = Object.fromEntries(
        RATED.map(rated => {
          const rating = ratings[rated]
          if (isGaps(c) || isGaps(rating)) return [rated, { gaps: once([c, rating].flatMap(x => (isGaps(x) ? x.gaps : []))) }]
          const mass = massOf(c.laden, rated)
          const left = make.work('to', roomTo, { rating, mass }, { item: `${item} ${rated}`, label: `Room, ${rated}, ${item}` })
          return [rated, { mass, rating, room: left }]
        }),
      ) as Rooms
    }
    const whole = ratings.total
    const payload = isGaps(whole)
      ? whole
      : isGaps(kerb)
        ? kerb
        : make.work('payload', roomTo, { rating: whole, mass: kerb.kerb }, { label: 'Payload: people and luggage together' })
    make.table('cases', {
      label: 'Load cases',
      columns: [
        { key: 'mass', label: 'total', unit: 'kg' },
        { key: 'total', label: 'left', unit: 'kg' },
        { key: 'front', label: 'front axle', unit: 'kg' },
        { key: 'front axle', label: 'left', unit: 'kg' },
        { key: 'rear', label: 'rear axle', unit: 'kg' },
        { key: 'rear axle', label: 'left', unit: 'kg' },
      ],
      rows: names.flatMap((name, i) => {
        const c = cases[i],
          rooms = out[name] as Rooms
        if (c === undefined || isGaps(c)) return []
        const left = (rated: Rated) => {
          const r = rooms[rated]
          return isGaps(r) ? undefined : r.room
        }
        return [
          {
            name,
            cells: {
              mass: c.laden.mass,
              front: c.laden.front,
              rear: c.laden.rear,
              total: left('total'),
              'front axle': left('front axle'),
              'rear axle': left('rear axle'),
            },
          },
        ]
      }),
    })
    return { payload, cases: out }
  },
})
