import { FULL_CHARGE } from '../../charging/charge.ts'
import { distanceBack } from '../../charging/power-to-pack.ts'
import { isGap } from '../../working/value.ts'
import { from, isGaps, maybe, study } from '../study.ts'
import type { RangeFigures } from '../trips/drive-until-empty.ts'
import { ranges } from '../trips/ranges.ts'
import { type ChargeKnown, charged, chargeReads } from './charging.ts'

/** How much distance comes back in the hours the car stands at each place, from the reserve, in the weather the goals share. */
export const parked = study({
  id: 'parked',
  stage: 'pack',
  asks: 'How much distance comes back in the hours it is parked?',
  reads: (m, ask) => {
    // At a post nobody parks for hours unless the file says so.
    const places = Object.entries(m.charging.places).filter(
      ([, p]) => !isGap(p.hours) || (!isGap(p.socket) && p.socket.value !== 'DC post'),
    )
    return {
      names: places.map(([name]) => name),
      places: places.map(([name, p]) =>
        maybe({ charge: chargeReads(m, ask, name), hours: p.hours, reserve: m.brief.reserve, temperature: m.brief.conditions.temperature }),
      ),
      ranges: maybe(from(ask(ranges), r => r)),
    }
  },
  answer: ({ names, places, ranges: all }, make): null => {
    const trips = isGaps(all)
      ? []
      : Object.entries((all as { trips: Record<string, RangeFigures | { gaps: unknown }> }).trips).filter(
          // What a trip takes that takes nothing cannot be put back.
          (t): t is [string, RangeFigures] => !('gaps' in t[1]) && t[1].range.value < Infinity,
        )
    const rows = places.flatMap((k, i) => {
      if (isGaps(k)) return []
      const item = names[i] as string,
        { charge: figures } = charged(
          make,
          k.charge as ChargeKnown,
          { from: k.reserve, to: FULL_CHARGE, most: k.hours, within: k.hours, temperature: k.temperature },
          item,
        )
      const back = trips.map(
        ([trip, r]) =>
          [
            trip,
            make.work(
              'distance-back',
              distanceBack,
              { stored: figures.stored, range: r.range, used: r['from-charge'] },
              { item: `${item} ${trip}`, label: `Distance put back at ${item}, ${trip}` },
            ),
          ] as const,
      )
      return [{ name: item, cells: { hours: k.hours, stored: figures.stored, ...Object.fromEntries(back) } }]
    })
    make.table('places', {
      label: 'Distance put back while parked',
      columns: [
        { key: 'hours', label: 'hours', unit: 's', shows: 'duration' },
        { key: 'stored', label: 'energy into the charge', unit: 'J', shows: 'energy' },
        ...trips.map(([trip]) => ({ key: trip, label: trip, unit: 'm', shows: 'distance' })),
      ],
      rows,
    })
    return null
  },
})
