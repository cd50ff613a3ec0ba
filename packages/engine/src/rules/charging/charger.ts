import type { Model } from '../../model/model.ts'
import { fullCharge } from '../../studies/charging/full-charge.ts'
import type { PackFigures } from '../../studies/pack/pack-figures.ts'
import { packModel } from '../../studies/pack/pack-model.ts'
import { stopVoltage, voltageWindow } from '../../studies/pack/voltage-window.ts'
import type { Ask } from '../../studies/study.ts'
import { type Gaps, isGaps } from '../../studies/study.ts'
import { isGap, type Value } from '../../working/value.ts'
import { doesNotApply, type Judgement, type Remedy, rule } from '../rule.ts'

const noCharger = (m: Model): boolean => !m.charging.charger.given
const packOf = (ask: Ask, pick: (p: PackFigures) => Value): Value | Gaps => {
  const pack = ask(packModel)
  return isGaps(pack) ? pack : pick(pack)
}
/** Down to this part of what counts as full the owner may have meant it. */
const LITTLE = 0.9
const OVERCHARGE =
  'An overcharged lithium pack can burn, hours after charging and with nobody near. Attend the first full charge from start to end, watching every cell from nine tenths on.'

export const chargerSetPoint = rule({
  id: 'charger-set-point',
  title: 'The charger stops at the pack’s full voltage or below',
  stage: 'pack',
  harm: 'S3',
  hazards: ['H4', 'A2'],
  source: { work: 'practice', place: 'set-point: cells in series times the highest cell voltage, locked and on a label' },
  caution: OVERCHARGE,
  judgements: (m, ask) => {
    if (noCharger(m)) return doesNotApply('no charger is planned yet', ['charging.charger'])
    const { setTo } = m.charging.charger,
      stop = stopVoltage(ask),
      ends = ask(voltageWindow),
      typed = !isGaps(ends) && stop === ends.charged && !isGap(m.pack.chargeTo)
    return [
      {
        about: ['charging.charger.set-to', 'pack.modules-in-series', 'pack.cell-highest', 'pack.charge-to'],
        found: setTo,
        side: 'at most',
        limit: stop,
        says: typed
          ? 'The charger is set to {found}; with every cell where charging is to stop the pack stands at {limit}.'
          : 'The charger is set to {found}; with every cell full the pack stands at {limit}.',
        remedies: isGaps(stop)
          ? []
          : [
              setTheCharger(stop),
              { do: 'act', says: 'Check the profile for chemistry and number of cells, lock it, and put it on a label.' },
            ],
      },
    ]
  },
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'charging.charger.set-to', now: '420 V' },
      { path: 'pack.cell-highest', now: '4.2 V' },
    ],
  },
})

const setTheCharger = (stop: Value): Remedy => ({
  do: 'set',
  says: 'Set the charger to the voltage at which this pack is to stop.',
  sets: [{ path: 'charging.charger.set-to', to: { value: Math.floor(stop.value), kind: 'voltage' } }],
})

export const chargerFills = rule({
  id: 'charger-fills',
  title: 'The charger fills the pack',
  stage: 'pack',
  harm: 'S1',
  hazards: [],
  source: { work: 'practice', place: 'set-point: too low, and range is lost at every charge' },
  judgements: (m, ask) => {
    if (noCharger(m)) return doesNotApply('no charger is planned yet', ['charging.charger'])
    const about = ['charging.charger.set-to', 'pack.charge-to', 'pack.modules-in-series'],
      answer = ask(fullCharge),
      stop = stopVoltage(ask)
    if (isGaps(answer)) return [{ about, says: 'How full the charger makes the pack cannot be said yet.', missing: answer }]
    const { reached, enough } = answer
    return [
      {
        about,
        found: reached,
        side: 'at least',
        limit: enough,
        says: 'Set to {set} the charger stops at {found} charge; from {limit} on the pack counts as full.',
        slots: { set: isGap(m.charging.charger.setTo) ? undefined : m.charging.charger.setTo },
        remedies: [
          ...(isGaps(stop) ? [] : [setTheCharger(stop)]),
          { do: 'act', says: 'Check the profile for chemistry and number of cells: it may be that of another pack.' },
        ],
        ...(reached.value >= LITTLE * enough.value ? { eased: 'only a little of the charge is given up' } : {}),
      },
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'charging.charger.set-to', now: '360 V' }] },
})

export const chargerReaches = rule({
  id: 'charger-window',
  title: 'The charger works from an empty pack up to the voltage it is set to',
  stage: 'pack',
  harm: 'S1',
  hazards: [],
  source: { work: 'practice', place: 'charger window against pack and setting' },
  judgements: (m, ask) => {
    if (noCharger(m)) return doesNotApply('no charger is planned yet', ['charging.charger'])
    const { lowestVoltage, highestVoltage, setTo } = m.charging.charger
    return [
      {
        item: 'empty',
        about: ['charging.charger.lowest-voltage', 'pack.cell-lowest'],
        found: lowestVoltage,
        side: 'at most',
        limit: packOf(ask, p => p.lowestVoltage),
        says: 'The charger starts from {found}; an empty pack stands at {limit}.',
        remedies: [{ do: 'act', says: 'Another charger, or more modules in series.' }],
      },
      {
        item: 'full',
        about: ['charging.charger.highest-voltage', 'charging.charger.set-to'],
        found: setTo,
        side: 'at most',
        limit: highestVoltage,
        says: 'The charger is to reach {found}; it goes up to {limit}.',
        remedies: [{ do: 'act', says: 'Another charger, or fewer modules in series.' }],
      },
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'charging.charger.highest-voltage', now: '390 V' }], item: 'full' },
})

export const dcInlet = rule({
  id: 'dc-voltage',
  title: 'Post and inlet stand the voltage of the full pack',
  stage: 'pack',
  harm: 'S3',
  hazards: [],
  source: { work: 'practice', place: 'rated voltage of contacts and posts' },
  caution:
    'Contacts above their rated voltage can arc. Only a matched set of inlet, contactors and the unit that talks to the post may meet a fast post.',
  judgements: (m, ask) => {
    const posts = Object.entries(m.charging.places).filter(([, p]) => !isGap(p.socket) && p.socket.value === 'DC post')
    if (posts.length === 0) return doesNotApply('no fast post is named', ['charging.places'])
    const full = packOf(ask, p => p.highestVoltage)
    return [
      {
        item: 'inlet',
        about: ['charging.dc.inlet-voltage'],
        found: full,
        side: 'at most',
        limit: m.charging.dc.inletVoltage,
        says: 'Full, the pack stands at {found}; the inlet is rated for {limit}.',
        remedies: [{ do: 'act', says: 'An inlet of the higher voltage class.' }],
      },
      ...posts.map(
        ([item, p]): Judgement => ({
          item,
          about: [`charging.places.${item}.voltage`],
          found: full,
          side: 'at most',
          limit: p.voltage,
          says: 'Full, the pack stands at {found}; the post at {item} goes to {limit}.',
          remedies: [{ do: 'act', says: 'Another post, or fewer modules in series.' }],
        }),
      ),
    ]
  },
  spoil: {
    sample: 'otter',
    edits: [
      { path: 'charging.dc.inlet-voltage', now: '400 V' },
      { path: 'pack.cell-highest', now: '4.2 V' },
    ],
    item: 'inlet',
  },
})

export const driveBlocked = rule({
  id: 'drive-blocked-while-plugged',
  title: 'It cannot drive off while plugged in',
  stage: 'signals',
  harm: 'S2',
  hazards: ['H2'],
  source: { work: 'un-r100', place: '§5.3.3, no movement by its own drive while the connector is in the inlet' },
  judgements: m => {
    const about = ['charging.blocks-drive'],
      { blocksDrive } = m.charging
    if (noCharger(m) && Object.keys(m.charging.places).length === 0) return doesNotApply('no charging is planned yet', about)
    if (isGap(blocksDrive))
      return [{ about, says: 'Whether a plug in the inlet keeps the car from driving is not planned yet.', missing: blocksDrive }]
    const holds = blocksDrive.value === 'yes'
    return [
      {
        about,
        holds,
        rests: [blocksDrive],
        says: holds ? 'A plug in the inlet keeps the car from driving.' : 'The car can drive off with the plug in its inlet.',
        remedies: [
          {
            do: 'set',
            says: 'Let the proximity line, or mains at the inlet, block driving, live or dead.',
            sets: [{ path: 'charging.blocks-drive', to: { word: 'yes' } }],
          },
        ],
      },
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'charging.blocks-drive', now: 'no' }] },
})
