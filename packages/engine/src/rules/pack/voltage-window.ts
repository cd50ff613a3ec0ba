import type { Model } from '../../model/model.ts'
import { at } from '../../numerics/curve.ts'
import { launchSag } from '../../studies/pack/launch-sag.ts'
import { packModel } from '../../studies/pack/pack-model.ts'
import { type VoltageUser, voltageUsers } from '../../studies/pack/voltage-window.ts'
import type { Ask } from '../../studies/study.ts'
import { isGaps } from '../../studies/study.ts'
import { isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import { open, PRACTICE } from './answers.ts'

const SHAPE = ['pack.modules-in-series', 'pack.module.cells-in-series']
const perUser = (m: Model, judged: (user: VoltageUser) => Judgement): readonly Judgement[] => {
  const users = voltageUsers(m)
  return users.length ? users.map(judged) : doesNotApply('no part hangs on the pack voltage yet', ['pack.users'])
}
const pack = (ask: Ask) => ask(packModel)

export const voltageWhenFull = rule({
  id: 'voltage-when-full',
  title: 'No part sees more voltage than it stands when the pack is full',
  stage: 'pack',
  harm: 'S2',
  hazards: ['G3'],
  source: { work: 'practice', place: 'a pack above a part’s window destroys it on the first full charge', mark: 'common practice' },
  judgements: (m, ask) => {
    const p = pack(ask)
    return perUser(m, ({ name, highest, about }) => {
      const where = [...SHAPE, 'pack.cell-highest', about[1]]
      if (isGaps(p)) return open(where, p, name)
      const { modulesInSeries: n, module, otherModule: o, cellHighest } = m.pack,
        // Modules of the other form stay as they are.
        kept = isGap(o.inSeries) || isGap(o.cellsInSeries) ? 0 : o.inSeries.value * o.cellsInSeries.value
      const most =
        isGap(highest) || isGap(n) || isGap(module.cellsInSeries) || isGap(cellHighest)
          ? 0
          : Math.floor((highest.value - kept * cellHighest.value) / (module.cellsInSeries.value * cellHighest.value) + 1e-9)
      return {
        item: name,
        about: where,
        found: p.highestVoltage,
        side: 'at most',
        limit: highest,
        says: 'Full, the pack has {found}; the {item} stands {limit}.',
        remedies: [
          ...(most >= 1
            ? [
                {
                  do: 'set' as const,
                  says: 'Fewer modules in series.',
                  sets: [{ path: 'pack.modules-in-series', to: { value: most, kind: 'count' as const } }],
                },
              ]
            : []),
          { do: 'act', says: 'Take a part that stands the voltage.' },
        ],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.users.dc-dc.highest', now: '390 V' }], item: 'dc-dc' },
})

export const voltageWhenEmpty = rule({
  id: 'voltage-when-empty',
  title: 'Every part still works when the pack is empty',
  stage: 'pack',
  harm: 'S2',
  hazards: [],
  source: {
    work: 'practice',
    place: 'an inverter or DC-DC that drops out leaves the car without drive, steering or lights',
    mark: 'common practice',
  },
  judgements: (m, ask) => {
    const p = pack(ask),
      { reserve } = m.brief
    return perUser(m, ({ name, lowest, about }) => {
      const where = [...SHAPE, 'pack.cell-lowest', about[0]]
      if (isGaps(p)) return open(where, p, name)
      return {
        item: name,
        about: where,
        found: p.lowestVoltage,
        side: 'at least',
        limit: lowest,
        says: 'Empty, the pack has {found}; the {item} works from {limit} up.',
        remedies: isGap(lowest)
          ? []
          : [
              // Stopping earlier costs nothing while the cells rest that low only within the reserve; further up it takes the range away.
              ...(!isGap(reserve) && lowest.value <= at(p.openCircuit.value, reserve.value)
                ? [
                    {
                      do: 'set' as const,
                      says: 'Stop discharging at a higher cell voltage, within the reserve; a little energy is lost.',
                      sets: [{ path: 'pack.cell-lowest', to: { value: lowest.value / p.cellsInSeries.value, kind: 'voltage' as const } }],
                    },
                  ]
                : []),
              { do: 'act', says: 'More modules in series, or a part that works from a lower voltage.' },
            ],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.users.cabin-heater.lowest', now: '300 V' }], item: 'cabin-heater' },
})

const AT_PLUG = 'a charger works at the plug, not at a launch'

export const voltageWhenSagging = rule({
  id: 'voltage-when-sagging',
  title: 'Every part still works at the most current the drive can draw, cold and on the reserve',
  stage: 'pack',
  harm: 'S2',
  hazards: [],
  source: { work: 'practice', place: 'sag trips inverters and DC-DC at the worst moment', mark: 'common practice' },
  judgements: (m, ask) => {
    const sag = ask(launchSag)
    // What only works while the car stands at the plug is not there at a launch.
    return perUser(m, ({ name, lowest, about }) => {
      if (name === 'charger') return { item: name, about: [about[0]], says: AT_PLUG, doesNotApply: AT_PLUG }
      const where = ['brief.reserve', 'trips.named', ...SHAPE, about[0]]
      if (isGaps(sag)) return open(where, sag, name)
      return {
        item: name,
        about: where,
        found: sag.voltage,
        side: 'at least',
        limit: lowest,
        says: 'At {current}, the most that inverters, cells and BMS let through, on the reserve and with cells as cold as any trip starts, the pack sags to {found}; the {item} works from {limit} up. A launch that draws less sags less.',
        slots: { current: sag.drawn },
        remedies: [
          {
            do: 'act',
            says: 'Warm the pack before setting off, let the BMS cut the current by the lowest cell, or keep a larger reserve.',
          },
        ],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.users.cabin-heater.lowest', now: '302 V' }], item: 'cabin-heater' },
})

export const breakingVoltage = rule({
  id: 'breaking-voltage',
  title: 'Fuse and contactors break the full pack voltage',
  stage: 'pack',
  harm: 'S3',
  hazards: ['C6'],
  source: PRACTICE,
  caution:
    'A fuse or contactor above its direct voltage keeps an arc alive: fire, molten metal. A rating for alternating current does not count.',
  judgements: (m, ask) => {
    const p = pack(ask),
      { fuseVoltage, contactorVoltage } = m.pack.limits
    return (
      [
        ['fuse', fuseVoltage, 'pack.limits.fuse-voltage'],
        ['contactor', contactorVoltage, 'pack.limits.contactor-voltage'],
      ] as const
    ).map(([item, rating, path]): Judgement => {
      const about = [path, ...SHAPE, 'pack.cell-highest']
      if (isGaps(p)) return open(about, p, item)
      return {
        item,
        about,
        found: rating,
        side: 'at least',
        limit: p.highestVoltage,
        says: 'The {item} breaks {found} of direct voltage; the full pack has {limit}.',
        remedies: [
          { do: 'act', says: 'A {item} rated for the full pack voltage in direct current, with its breaking capacity in the datasheet.' },
        ],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.limits.fuse-voltage', now: '250 V' }], item: 'fuse' },
})
