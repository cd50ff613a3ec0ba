import { contactorForTime, fuseForTime, recoveryCurrent } from '../../battery/pack-sums.ts'
import { lesserCurrent } from '../../charging/outlet.ts'
import { currentRoom } from '../../charging/room.ts'
import type { Model } from '../../model/model.ts'
import type { Figure, Gap, Value } from '../../working/value.ts'
import { outlets, type Supply } from '../charging/outlets.ts'
import { batteryPull, type FromBattery } from '../drive/battery-pull.ts'
import { type Ask, from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { bmsLimits } from './bms-limits.ts'
import { packModel } from './pack-model.ts'

export type CurrentsThrough = {
  /** Seconds only: a fuse and a contactor carry more than for ever. */
  readonly short: { readonly peak: Value | Gaps; readonly recovery: Value | Gaps | null }
  /** For hours, by charging place. */
  readonly charging: Readonly<Record<string, Value | Gaps>>
  readonly carried: { readonly fuse: Figure | Gaps; readonly contactor: Figure | Gaps }
}

const noUnit = (m: Model): Gap | null =>
  Object.keys(m.drive.units).length > 0 ? null : { gap: true, path: 'drive.units', label: 'drive units', until: 'any time' }
const placeOf = (ask: Ask, place: string) =>
  from(ask(outlets), o => {
    const s = o.places[place] as Supply | Gaps
    return isGaps(s) ? s : { supply: s }
  })

/** Every current that goes through main fuse and contactor: pulling hardest, braking by the motors, charging. */
export const currentsThrough = study({
  id: 'through',
  stage: 'pack',
  asks: 'Which currents go through fuse and contactor, and what do they carry?',
  reads: (m, ask) => {
    const { limits } = m.pack,
      places = Object.keys(m.charging.places)
    return {
      battery: maybe({ units: noUnit(m), pull: ask(batteryPull) }),
      recovery: m.drive.regeneration.given ? maybe({ power: m.drive.regeneration.power, pack: ask(packModel) }) : null,
      names: places,
      all: maybe(from(ask(outlets), o => o)),
      places: places.map(place => maybe(placeOf(ask, place))),
      set: bmsLimits(m.pack).charger,
      fuse: maybe({ rating: limits.fuse, melts: limits.fuseMelts }),
      contactor: maybe({ rating: limits.contactor, peak: limits.contactorPeak }),
    }
  },
  answer: ({ battery, recovery, names, all, places, set, fuse, contactor }, make): CurrentsThrough => ({
    short: {
      // Full and warm the battery gives most.
      peak: isGaps(battery) ? battery : ((battery.pull as Record<string, FromBattery>)['full hot'] as FromBattery).current,
      recovery:
        recovery === null || isGaps(recovery)
          ? recovery
          : make.work('recovery', recoveryCurrent, {
              power: recovery.power,
              voltage: recovery.pack.lowestVoltage,
              most: recovery.pack.held.charge,
            }),
    },
    charging: Object.fromEntries(
      places.map((k, i): [string, Value | Gaps] => {
        const item = names[i] as string
        if (isGaps(k) || isGaps(all)) return [item, isGaps(k) ? k : (all as Gaps)]
        const { current } = (all.places as Record<string, Supply>)[item] as Supply
        return [
          item,
          set === null
            ? current
            : make.work('charging', lesserCurrent, { one: current, other: set }, { item, label: `Highest charging current, ${item}` }),
        ]
      }),
    ),
    carried: {
      fuse: isGaps(fuse)
        ? fuse
        : beyondRating(make, 'fuse', make.work('fuse', fuseForTime, fuse, { label: 'Current the fuse carries for a peak' }), fuse.rating),
      contactor: isGaps(contactor)
        ? contactor
        : beyondRating(
            make,
            'contactor',
            make.work('contactor', contactorForTime, contactor, { label: 'Current the contactor carries for a peak' }),
            contactor.rating,
          ),
    },
  }),
})

/** How much more a part carries for a peak than for ever; gives back what it carries. */
function beyondRating(make: Maker, part: string, carried: Figure, rating: Value): Figure {
  make.work(
    `${part}-room`,
    currentRoom,
    { carries: carried, current: rating },
    { label: `Current the ${part} carries for a peak beyond its rating` },
  )
  return carried
}
