import { ladenMass, ladenRear, leastRoom, peopleInRow, peopleMass, roomTo, usableSeats } from '../../vehicle/laden.ts'
import { otherAxle } from '../../vehicle/mass-and-axles.ts'
import { type Figure, type Gap, standard, type Value } from '../../working/value.ts'
import { study } from '../study.ts'
import { ledger } from './ledger.ts'
import { type Rated, ratingsOf } from './ratings.ts'

export type Seats = {
  /** How many of the seats may be used with the luggage wanted aboard. */
  readonly usable: Figure
  readonly places: number
  /** The rating that breaks first when one more person sits down; none where every seat may be used. */
  readonly breaks: { readonly rated: Rated; readonly room: Figure } | undefined
}

const NO_SEATS: Gap = { gap: true, path: 'donor.seats', label: 'seat rows', until: 'any time', why: 'missing' }
const count = (n: number): Value => standard(`people-${n}`, `${n} aboard`, 'N', n, '1', { work: 'definition', place: 'counting' })

/** How many people may sit in the finished car with the luggage wanted: one by one, front rows first, until a rating breaks. */
export const seats = study({
  id: 'seats',
  stage: 'donor',
  asks: 'How many seats may still be used?',
  reads: (m, ask) => ({
    kerb: ask(ledger),
    wheelbase: m.donor.wheelbase,
    rows:
      Object.keys(m.donor.seats).length === 0
        ? NO_SEATS
        : Object.entries(m.donor.seats).map(([name, s]) => ({ name, places: s.places, x: s.x })),
    person: m.brief.person,
    luggage: m.brief.luggage,
    luggageX: m.donor.luggageX,
    ratings: ratingsOf(m),
  }),
  answer: (k, make): Seats => {
    const rows = [...k.rows].sort((a, b) => a.x.value - b.x.value),
      places = rows.reduce((n, r) => n + Math.round(r.places.value), 0)
    const least: Figure[] = []
    let breaks: Seats['breaks']
    for (let n = 1; n <= places; n++) {
      const item = `${n}`,
        loads: Value[] = [k.luggage],
        x: Value[] = [k.luggageX]
      for (const [i, row] of rows.entries()) {
        const inRow = { people: count(n), ahead: rows.slice(0, i).map(r => r.places), places: row.places },
          at = { item: `${item} ${row.name}`, label: `${row.name}, ${item} aboard` }
        loads.push(make.work('people-mass', peopleMass, { people: make.work('people', peopleInRow, inRow, at), person: k.person }, at))
        x.push(row.x)
      }
      const mass = make.work('mass', ladenMass, { kerb: k.kerb.kerb, loads }, { item, label: `Mass, ${item} aboard` })
      const rear = make.work(
        'rear',
        ladenRear,
        { rear: k.kerb.rear, loads, x, wheelbase: k.wheelbase },
        { item, label: `Rear axle, ${item} aboard` },
      )
      const front = make.work('front', otherAxle, { total: mass, one: rear }, { item, label: `Front axle, ${item} aboard` })
      const rooms = (
        [
          ['total', mass],
          ['front axle', front],
          ['rear axle', rear],
        ] as const
      ).map(([rated, found]) => ({
        rated,
        room: make.work(
          'room',
          roomTo,
          { rating: k.ratings[rated], mass: found },
          { item: `${item} ${rated}`, label: `Room, ${rated}, ${item} aboard` },
        ),
      }))
      breaks ??= rooms.filter(r => r.room.value < 0).sort((a, b) => a.room.value - b.room.value)[0]
      // Once a rating is broken, later people do not mend it: the least room met so far counts.
      least.push(
        make.work(
          'least',
          leastRoom,
          { rooms: [...rooms.map(r => r.room), ...least.slice(-1)] },
          { item, label: `Least room up to ${item} aboard` },
        ),
      )
    }
    return {
      usable: make.work('usable', usableSeats, { rooms: least }, { label: 'Seats that may be used, luggage aboard' }),
      places,
      breaks,
    }
  },
})
