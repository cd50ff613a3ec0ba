import type { Source } from '../../sources.ts'
import { moduleVoltage } from '../../studies/pack/module-voltage.ts'
import { packMass } from '../../studies/pack/pack-mass.ts'
import { strings as stringsStudy } from '../../studies/pack/strings.ts'
import { isGaps } from '../../studies/study.ts'
import { type Fact, isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, type Remedy, rule } from '../rule.ts'
import { limitOf, open, PRACTICE } from './answers.ts'

const SHEETS: Source = { work: 'cell-sheets', place: 'charge and discharge limits by chemistry' }
const volts = (name: string, label: string, value: number): Fact => limitOf(name, label, value, 'V', SHEETS)
/** Highest and lowest voltage of a cell by chemistry, as published sheets have them. */
const WINDOW = {
  NMC: [volts('nmc-lowest', 'lowest, NMC', 2.5), volts('nmc-highest', 'highest, NMC', 4.2)],
  NCA: [volts('nca-lowest', 'lowest, NCA', 2.5), volts('nca-highest', 'highest, NCA', 4.2)],
  LFP: [volts('lfp-lowest', 'lowest, LFP', 2.0), volts('lfp-highest', 'highest, LFP', 3.65)],
  LTO: [volts('lto-lowest', 'lowest, LTO', 1.5), volts('lto-highest', 'highest, LTO', 2.8)],
} as const
const BURNS = 'Cells charged past their limit burn, often hours later and in a parked car.'

export const cellLimits = rule({
  id: 'cell-limits',
  title: 'The cell voltages set fit the chemistry',
  stage: 'pack',
  harm: 'S3',
  hazards: [],
  source: SHEETS,
  caution: BURNS,
  judgements: m => {
    const { chemistry } = m.pack.module
    if (isGap(chemistry)) return [open(['pack.module.chemistry'], chemistry)]
    const [lowest, highest] = WINDOW[chemistry.value]
    const item = (name: 'highest' | 'lowest', found: typeof m.pack.cellHighest, side: 'at most' | 'at least', limit: Fact): Judgement => ({
      item: name,
      about: [`pack.cell-${name}`, 'pack.module.chemistry'],
      found,
      side,
      limit,
      says:
        name === 'highest'
          ? 'A cell is charged up to {found}; cells of this chemistry go to {limit}.'
          : 'A cell is emptied down to {found}; cells of this chemistry end at {limit}.',
      remedies: [
        {
          do: 'set',
          says: 'The limit of the chemistry; the maker’s sheet may be stricter.',
          sets: [{ path: `pack.cell-${name}`, to: { value: limit.value, kind: 'voltage' } }],
        },
      ],
    })
    return [item('highest', m.pack.cellHighest, 'at most', highest), item('lowest', m.pack.cellLowest, 'at least', lowest)]
  },
  spoil: { sample: 'wren', edits: [{ path: 'pack.cell-highest', now: '4.2 V' }], item: 'highest' },
})

export const chargeStops = rule({
  id: 'charge-stops-in-time',
  title: 'Charging stops at or below the highest cell voltage',
  stage: 'pack',
  harm: 'S3',
  hazards: ['A2'],
  source: PRACTICE,
  caution: BURNS,
  judgements: m => {
    const { chargeTo, cellHighest } = m.pack
    return [
      {
        about: ['pack.charge-to', 'pack.cell-highest'],
        found: chargeTo,
        side: 'at most',
        limit: cellHighest,
        says: 'Charging stops at {found} for each cell; the highest allowed is {limit}.',
        remedies: isGap(cellHighest)
          ? []
          : [
              {
                do: 'set',
                says: 'Stop at the highest voltage allowed, or a little below for a longer life.',
                sets: [{ path: 'pack.charge-to', to: { value: cellHighest.value, kind: 'voltage' } }],
              },
            ],
      },
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.charge-to', now: '4.25 V' }] },
})

export const emptyBelowFull = rule({
  id: 'cells-empty-below-full',
  title: 'A cell is empty at a lower voltage than it is full',
  stage: 'pack',
  harm: 'S2',
  hazards: [],
  source: { work: 'definition', place: 'a cell gives charge between the voltage it is charged to and the one it is emptied to' },
  judgements: m => {
    const { cellLowest, chargeTo, module } = m.pack,
      about = ['pack.cell-lowest', 'pack.charge-to']
    if (isGap(cellLowest)) return [open(about, cellLowest)]
    if (isGap(chargeTo)) return [open(about, chargeTo)]
    const lowest = isGap(module.chemistry) ? undefined : WINDOW[module.chemistry.value][0]
    return [
      {
        about,
        holds: cellLowest.value < chargeTo.value,
        rests: [cellLowest, chargeTo],
        says: 'A cell is emptied down to {lowest} and charged up to {stop}; what lies between is all it gives.',
        slots: { lowest: cellLowest, stop: chargeTo },
        remedies:
          lowest && lowest.value < chargeTo.value
            ? [
                {
                  do: 'set',
                  says: 'Empty the cells to the limit of the chemistry; the maker’s sheet may be stricter.',
                  sets: [{ path: 'pack.cell-lowest', to: { value: lowest.value, kind: 'voltage' } }],
                },
              ]
            : [{ do: 'act', says: 'Take both voltages from the sheet of the cell.' }],
      },
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.cell-lowest', now: '4.583 V' }] },
})

const TOUCH = limitOf('touch-voltage', 'direct voltage from which high-voltage rules hold', 60, 'V', {
  work: 'un-r100',
  place: '2, definition of high voltage',
})
const CAREFUL = limitOf('careful-voltage', 'direct voltage the trade treats as dangerous', 48, 'V', PRACTICE)
export const moduleAlone = rule({
  id: 'module-alone-below-high-voltage',
  title: 'One module alone stays below high voltage',
  stage: 'pack',
  harm: 'S3',
  hazards: [],
  source: { work: 'un-r100', place: '2, definition of high voltage: above 60 V DC' },
  caution:
    'Such a module is dangerous to life on the bench, before anything is connected. Only high-voltage qualified people, gloves within date, one pole covered.',
  judgements: (_, ask) => {
    const about = ['pack.module.cells-in-series', 'pack.cell-highest'],
      v = ask(moduleVoltage)
    if (isGaps(v)) return [open(about, v)]
    const judged = (full: typeof v.full, item?: string): Judgement => ({
      ...(item === undefined ? { about } : { item, about: ['pack.other-module.cells-in-series', 'pack.cell-highest'] }),
      found: full,
      side: 'at most',
      limit: TOUCH,
      says: 'One module alone has {found} when full; above {limit} it is high voltage by itself, and the trade treats it so from about {careful} on.',
      slots: { careful: CAREFUL },
      remedies: [{ do: 'act', says: 'Plan every step with this module as high-voltage work, or take modules with fewer cells in series.' }],
    })
    if (v.other === null) return [judged(v.full)]
    const other = 'other form'
    return [judged(v.full), isGaps(v.other) ? open(['pack.other-module.cells-in-series'], v.other, other) : judged(v.other, other)]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.module.cells-in-series', now: '16' }] },
})

export const outsideCabin = rule({
  id: 'battery-outside-cabin',
  title: 'No battery stands in the space of the occupants',
  stage: 'pack',
  harm: 'S3',
  hazards: [],
  source: { work: 'practice', place: 'an overheating lithium pack gives off toxic hydrogen fluoride', mark: 'common practice' },
  caution: 'Gas of a burning cell is toxic and explosive: hydrogen fluoride, carbon monoxide, hydrogen. Nobody may sit in it.',
  judgements: m => {
    const boxes = Object.entries(m.pack.boxes)
    if (boxes.length === 0) return doesNotApply('no battery box is planned yet', ['pack.boxes'])
    return boxes.map(([item, { where, sealed }]): Judgement => {
      const about = [`pack.boxes.${item}.where`, `pack.boxes.${item}.sealed`]
      if (isGap(where)) return open(about, where, item)
      const inBoot = where.value === 'boot'
      if (inBoot && isGap(sealed)) return open(about, sealed, item)
      const shut = isGap(sealed) ? undefined : sealed
      return {
        item,
        about,
        holds: where.value !== 'cabin' && !(inBoot && shut?.value !== 'yes'),
        rests: inBoot && shut ? [where, shut] : [where],
        says: inBoot
          ? 'Box {item}: {where}, which is one space with the cabin in most cars; sealed against it and vented to the outside: {sealed}.'
          : 'Box {item}: {where}.',
        slots: { where, sealed: inBoot ? shut : undefined },
        remedies: [
          {
            do: 'set',
            says: 'Under the floor, or where the engine was, sealed against the cabin and vented to the outside.',
            sets: [{ path: `pack.boxes.${item}.where`, to: { word: 'under floor' } }],
          },
        ],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.boxes.boot.where', now: 'cabin' }], item: 'boot' },
})

export const everyModulePlaced = rule({
  id: 'every-module-placed',
  title: 'The boxes hold as many modules as the pack has',
  stage: 'pack',
  harm: 'S1',
  hazards: [],
  source: { work: 'definition', place: 'counting' },
  judgements: (_, ask) => {
    const about = ['pack.boxes', 'pack.modules-in-series', 'pack.strings'],
      mass = ask(packMass)
    if (isGaps(mass)) return [open(about, mass)]
    const remedies: readonly Remedy[] = [{ do: 'act', says: 'Give every module a box, or say how many are in series and parallel.' }],
      { boxed, wanted, others } = mass
    const all: Judgement = {
      about,
      holds: Math.abs(boxed.value - wanted.value) < 0.5,
      rests: [boxed, wanted],
      says: 'The boxes hold {boxed} modules; the pack has {wanted}.',
      slots: { boxed, wanted },
      remedies,
    }
    if (!others) return [all]
    return [
      all,
      {
        item: 'other form',
        about: ['pack.boxes', 'pack.other-module.in-series', 'pack.strings'],
        holds: Math.abs(others.boxed.value - others.wanted.value) < 0.5,
        rests: [others.boxed, others.wanted],
        says: 'The boxes hold {boxed} modules of the other form; the pack has {wanted}.',
        slots: { boxed: others.boxed, wanted: others.wanted },
        remedies,
      },
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.boxes.boot.modules', now: '3' }] },
})

export const stringFused = rule({
  id: 'string-fused',
  title: 'Each of several strings has its own fuse',
  stage: 'pack',
  harm: 'S3',
  hazards: ['A6'],
  source: PRACTICE,
  caution: 'A shorted cell pulls its string down; the other strings feed the fault with everything they have.',
  judgements: m => {
    const { strings: n, limits, module } = m.pack,
      about = ['pack.strings', 'pack.limits.string-fuse', 'pack.module.peak-current']
    if (isGap(n)) return [open(about, n)]
    if (n.value <= 1) return doesNotApply('there is one string', about)
    return [
      {
        about,
        found: limits.stringFuse,
        side: 'at most',
        limit: module.peakCurrent,
        says: 'Each string is fused at {found}; its cells give {limit} at their peak. A larger fuse lets the other strings feed a short.',
        remedies: isGap(module.continuousCurrent)
          ? []
          : [
              {
                do: 'set',
                says: 'A fuse for the continuous current of one string.',
                sets: [{ path: 'pack.limits.string-fuse', to: { value: module.continuousCurrent.value, kind: 'current' } }],
              },
            ],
      },
    ]
  },
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'pack.strings', now: '2' },
      { path: 'pack.modules-in-series', now: '8' },
      { path: 'pack.limits.string-fuse', now: '600 A' },
    ],
  },
})

export const stringsAlike = rule({
  id: 'strings-joined-alike',
  title: 'Strings are joined at the same charge',
  stage: 'pack',
  harm: 'S2',
  hazards: ['A9'],
  source: PRACTICE,
  judgements: (m, ask) => {
    const { strings: n, module } = m.pack,
      about = ['pack.strings', 'pack.strings-apart', 'pack.module.charge-current']
    if (isGap(n)) return [open(about, n)]
    if (n.value <= 1) return doesNotApply('there is one string', about)
    const joined = ask(stringsStudy)
    if (isGaps(joined)) return [open(about, joined)]
    return [
      {
        about,
        found: joined.peak,
        side: 'at most',
        limit: module.chargeCurrent,
        says: 'Joined as they stand, {found} flows from one string into the other, which may take {limit}; {heat} turns to heat, whatever the lead.',
        slots: { heat: joined.heat },
        remedies: [
          {
            do: 'act',
            says: 'Charge every string to full by itself first; LFP never by voltage alone. Join through a resistor, and only then bare.',
          },
        ],
      },
    ]
  },
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'pack.strings', now: '2' },
      { path: 'pack.modules-in-series', now: '8' },
      { path: 'pack.strings-apart', now: '30 V' },
    ],
  },
})
