import { behindRear, ladenMass, ladenRear, peopleInRow, peopleMass } from '../../vehicle/laden.ts'
import { otherAxle } from '../../vehicle/mass-and-axles.ts'
import { type Figure, isGap, type Value } from '../../working/value.ts'
import { type Gaps, isGaps, maybe, study } from '../study.ts'
import { ledger } from './ledger.ts'

export type Laden = { readonly mass: Figure; readonly front: Figure; readonly rear: Figure }

/** Mass and axle loads with people, luggage and nose load, for each load case of the brief. */
export const loadCases = study({
  id: 'load',
  stage: 'donor',
  asks: 'What do the axles carry with people and luggage aboard?',
  reads: (m, ask) => {
    const rows = Object.entries(m.donor.seats).map(([name, s]) => ({ name, places: s.places, x: s.x }))
    return {
      kerb: ask(ledger),
      wheelbase: m.donor.wheelbase,
      cases: Object.entries(m.brief.loads).map(([name, load]) => {
        const trailer = isGap(load.trailer) ? undefined : m.trips.trailers[load.trailer.value]
        return maybe({
          name,
          people: load.people,
          person: m.brief.person,
          rows,
          luggage: load.luggage,
          luggageX: m.donor.luggageX,
          nose: trailer ? { load: trailer.noseLoad, overhang: m.donor.towing.couplingOverhang } : null,
        })
      }),
      names: Object.keys(m.brief.loads),
    }
  },
  answer: (known, make): { cases: Readonly<Record<string, Laden | Gaps>> } => {
    const cases: Record<string, Laden | Gaps> = {}
    for (const [i, c] of known.cases.entries()) {
      const item = known.names[i] as string
      if (isGaps(c)) {
        cases[item] = c
        continue
      }
      const rows = [...c.rows].sort((a, b) => a.x.value - b.x.value),
        loads: Value[] = [],
        x: Value[] = []
      for (const [k, row] of rows.entries()) {
        const people = make.work(
          'people',
          peopleInRow,
          { people: c.people, ahead: rows.slice(0, k).map(r => r.places), places: row.places },
          { item: `${item} ${row.name}`, label: `People in ${row.name}, ${item}` },
        )
        loads.push(
          make.work(
            'people-mass',
            peopleMass,
            { people, person: c.person },
            { item: `${item} ${row.name}`, label: `Mass in ${row.name}, ${item}` },
          ),
        )
        x.push(row.x)
      }
      loads.push(c.luggage)
      x.push(c.luggageX)
      if (c.nose) {
        loads.push(c.nose.load)
        x.push(
          make.work(
            'nose-x',
            behindRear,
            { wheelbase: known.wheelbase, overhang: c.nose.overhang },
            { item, label: 'Coupling, behind the front axle' },
          ),
        )
      }
      const mass = make.work('mass', ladenMass, { kerb: known.kerb.kerb, loads }, { item, label: `Mass, ${item}` })
      const rear = make.work(
        'rear',
        ladenRear,
        { rear: known.kerb.rear, loads, x, wheelbase: known.wheelbase },
        { item, label: `Rear axle, ${item}` },
      )
      cases[item] = { mass, rear, front: make.work('front', otherAxle, { total: mass, one: rear }, { item, label: `Front axle, ${item}` }) }
    }
    return { cases }
  },
})
