import type { Model } from '../../model/model.ts'
import type { Source } from '../../sources.ts'
import { packModel } from '../../studies/pack/pack-model.ts'
import { type Ask, isGaps } from '../../studies/study.ts'
import { type Fact, type Field, isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import { limitOf, open, PRACTICE } from './answers.ts'

const FIRE = 'Overcharged or overheated lithium cells burn and give off toxic gas, often in a parked car.'
/** What a BMS does is judged only where one is fitted; without one nobody does it, whatever is written beside. */
const ofFitted =
  (without: string, about: string, judged: (m: Model, ask: Ask) => readonly Judgement[]) =>
  (m: Model, ask: Ask): readonly Judgement[] => {
    const { fitted } = m.pack.bms,
      paths = [about, 'pack.bms.fitted']
    if (isGap(fitted)) return [open(paths, fitted)]
    if (fitted.value === 'yes') return judged(m, ask)
    return [
      {
        about: paths,
        holds: false,
        rests: [fitted],
        says: without,
        remedies: set('pack.bms.fitted', 'yes', 'Plan a BMS for this chemistry and number of cells.'),
      },
    ]
  }
const set = (path: string, word: string, says: string) => [{ do: 'set' as const, says, sets: [{ path, to: { word } }] }]

export const bmsFitted = rule({
  id: 'bms-fitted',
  title: 'A BMS watches the cells',
  stage: 'pack',
  harm: 'S3',
  hazards: ['A3'],
  source: PRACTICE,
  caution: FIRE,
  judgements: m => {
    const { fitted } = m.pack.bms,
      about = ['pack.bms.fitted']
    if (isGap(fitted)) return [open(about, fitted)]
    return [
      {
        about,
        holds: fitted.value === 'yes',
        rests: [fitted],
        says: 'BMS fitted: {fitted}. Lithium cells are never used without one.',
        slots: { fitted },
        remedies: set('pack.bms.fitted', 'yes', 'Plan a BMS for this chemistry and number of cells.'),
      },
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.bms.fitted', now: 'no' }] },
})

type Answer = { readonly field: Field<string>; readonly good: string; readonly says: string; readonly remedy: string }
/** What a fitted BMS does, as one word of the file: good or not. */
const done = (without: string, path: string, asked: (bms: Model['pack']['bms']) => Answer) =>
  ofFitted(without, path, m => {
    const { field, good, says, remedy } = asked(m.pack.bms),
      about = [path]
    if (isGap(field)) return [open(about, field)]
    return [{ about, holds: field.value === good, rests: [field], says, slots: { does: field }, remedies: set(path, good, remedy) }]
  })

export const bmsStopsCharger = rule({
  id: 'bms-stops-charger',
  title: 'The BMS stops the charger',
  stage: 'pack',
  harm: 'S3',
  hazards: ['A2', 'A3'],
  source: PRACTICE,
  caution: FIRE,
  judgements: done('No BMS is fitted: nobody stops the charger when one cell is full.', 'pack.bms.controls-charger', bms => ({
    field: bms.controlsCharger,
    good: 'yes',
    says: 'The BMS stops the charger: {does}. Without it one full cell is charged on until it burns.',
    remedy: 'Run the charger’s enable through the BMS, and prove that it stops.',
  })),
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.bms.controls-charger', now: 'no' }] },
})

export const bmsLimitsDrive = rule({
  id: 'bms-limits-drive',
  title: 'The BMS cuts the drive back by the lowest cell, then stops it',
  stage: 'pack',
  harm: 'S3',
  hazards: ['A3', 'A4'],
  source: PRACTICE,
  caution: FIRE,
  judgements: done('No BMS is fitted: nobody cuts the drive back when one cell is empty.', 'pack.bms.limits-drive', bms => ({
    field: bms.limitsDrive,
    good: 'by lowest cell',
    says: 'The BMS limits the drive: {does}. The sum of all cells hides the one that is driven below zero.',
    remedy: 'Let the lowest cell set the current, with a warning the driver cannot miss.',
  })),
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.bms.limits-drive', now: 'by pack voltage' }] },
})

export const bmsWatchesTemperature = rule({
  id: 'bms-watches-temperature',
  title: 'The BMS watches how hot the cells are',
  stage: 'pack',
  harm: 'S3',
  hazards: ['A3'],
  source: PRACTICE,
  caution: FIRE,
  judgements: done('No BMS is fitted: nobody notices cells that run hot.', 'pack.bms.watches-temperature', bms => ({
    field: bms.watchesTemperature,
    good: 'yes',
    says: 'The BMS measures temperatures in the pack and cuts drive and charger when a cell runs hot: {does}.',
    remedy: 'Sensors at the warmest and the coldest modules, wired to the BMS, with limits from the cell’s sheet.',
  })),
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.bms.watches-temperature', now: 'no' }] },
})

export const bmsWatchesAll = rule({
  id: 'bms-watches-every-group',
  title: 'The BMS has an input for every cell group',
  stage: 'pack',
  harm: 'S3',
  hazards: ['A4'],
  source: PRACTICE,
  caution: FIRE,
  judgements: ofFitted('No BMS is fitted: every group is charged and emptied blindly.', 'pack.bms.cells', (m, ask) => {
    const p = ask(packModel),
      about = ['pack.bms.cells', 'pack.modules-in-series', 'pack.module.cells-in-series', 'pack.strings']
    if (isGaps(p)) return [open(about, p)]
    return [
      {
        about,
        found: m.pack.bms.cells,
        side: 'at least',
        limit: p.groups,
        says: 'The BMS watches {found} groups; the pack has {limit}. A group nobody watches is charged and emptied blindly.',
        remedies: [{ do: 'act', says: 'A BMS, or more monitor boards, for every group of every string.' }],
      },
    ]
  }),
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.bms.cells', now: '84' }] },
})

export const chargeCounted = rule({
  id: 'charge-counted',
  title: 'On cells with a flat voltage the BMS counts charge',
  stage: 'pack',
  harm: 'S2',
  hazards: ['B8'],
  source: PRACTICE,
  judgements: (m, ask) => {
    const { chemistry } = m.pack.module,
      { countsCharge } = m.pack.bms,
      about = ['pack.bms.counts-charge', 'pack.module.chemistry']
    if (isGap(chemistry)) return [open(about, chemistry)]
    if (chemistry.value !== 'LFP') return doesNotApply('the voltage of this chemistry tells its charge well enough', about)
    return ofFitted('No BMS is fitted: nobody counts the charge.', 'pack.bms.counts-charge', () =>
      isGap(countsCharge)
        ? [open(about, countsCharge)]
        : [
            {
              about,
              holds: countsCharge.value === 'yes',
              rests: [chemistry, countsCharge],
              says: 'The BMS counts charge: {counts}. Between a third and nine tenths the voltage of LFP says nothing; the gauge would fall to empty at once.',
              slots: { counts: countsCharge },
              remedies: set('pack.bms.counts-charge', 'yes', 'A BMS that counts charge and corrects it at full and near empty.'),
            },
          ],
    )(m, ask)
  },
  spoil: { sample: 'wren', edits: [{ path: 'pack.bms.counts-charge', now: 'no' }] },
})

const SHEETS: Source = { work: 'cell-sheets', place: 'charging window of lithium-ion cells: 0 to 45 °C' }
const FREEZING = limitOf('charging-freezing', 'freezing', 273.15, 'K', SHEETS, 'temperature')
export const noColdCharging = rule({
  id: 'no-charging-below-freezing',
  title: 'Nothing charges the cells below freezing',
  stage: 'pack',
  harm: 'S3',
  hazards: ['A1'],
  source: SHEETS,
  caution: 'Metallic lithium from cold charging does not show and does not go away; it can short a cell months later.',
  judgements: (m, ask) => {
    const { chemistry } = m.pack.module,
      { lowestChargeTemperature } = m.pack.bms,
      about = ['pack.bms.lowest-charge-temperature', 'pack.module.chemistry']
    if (isGap(chemistry)) return [open(about, chemistry)]
    if (chemistry.value === 'LTO')
      return doesNotApply('titanate cells do not plate in normal use; their maker’s sheet says how cold they may be charged', about)
    return ofFitted('No BMS is fitted: nothing keeps charge out of frozen cells.', 'pack.bms.lowest-charge-temperature', () => [
      {
        about,
        found: lowestChargeTemperature,
        side: 'at least',
        limit: FREEZING,
        says: 'The BMS lets charge in from {found} up, regeneration included; the coldest cell must be above {limit}.',
        remedies: [
          {
            do: 'set',
            says: 'Stop all charging at two degrees above freezing: the sensor lags behind the coldest cell.',
            sets: [{ path: 'pack.bms.lowest-charge-temperature', to: { value: 275.15, kind: 'temperature' } }],
          },
        ],
      },
    ])(m, ask)
  },
  spoil: { sample: 'wren', edits: [{ path: 'pack.bms.lowest-charge-temperature', now: '-10 °C' }] },
})

/** A cell that shorts inside empties its neighbours: a fuse of its own cuts it off, or the sinking group is noticed in time. */
export const shortedCell = rule({
  id: 'shorted-cell-caught',
  title: 'A shorted cell in a group is cut off or noticed',
  stage: 'pack',
  harm: 'S3',
  hazards: ['A6'],
  source: PRACTICE,
  caution: 'The cells beside a shorted one empty themselves through it: it can burn hours later, in a parked car.',
  judgements: m => {
    const { cellsInParallel: parallel, cellFuses } = m.pack.module,
      { fitted, watchesRest } = m.pack.bms,
      about = ['pack.module.cells-in-parallel', 'pack.module.cell-fuses', 'pack.bms.watches-rest', 'pack.bms.fitted']
    if (isGap(parallel)) return [open(about, parallel)]
    if (parallel.value <= 1) return doesNotApply('no cell stands beside another in its group', about)
    if (!isGap(cellFuses) && cellFuses.value === 'yes')
      return [
        {
          about,
          holds: true,
          rests: [parallel, cellFuses],
          says: 'Groups of {parallel} cells, each with a fuse of its own: {fuses}.',
          slots: { parallel, fuses: cellFuses },
        },
      ]
    const noBms = !isGap(fitted) && fitted.value === 'no'
    if (!noBms && isGap(watchesRest)) return [open(about, watchesRest)]
    if (!noBms && isGap(fitted)) return [open(about, fitted)]
    if (!noBms && !isGap(watchesRest) && watchesRest.value === 'yes')
      return [
        {
          about,
          holds: true,
          rests: [parallel, fitted as Fact<string>, watchesRest],
          says: 'Groups of {parallel} cells; the BMS warns when the voltage of one group sinks at rest: {watched}.',
          slots: { parallel, watched: watchesRest },
        },
      ]
    if (isGap(cellFuses)) return [open(about, cellFuses)]
    return [
      {
        about,
        holds: false,
        rests: [parallel, cellFuses, ...(isGap(fitted) ? [] : [fitted]), ...(isGap(watchesRest) ? [] : [watchesRest])],
        says: 'Groups of {parallel} cells: no cell has a fuse of its own, and nobody notices a group that sinks at rest.',
        slots: { parallel },
        remedies: noBms
          ? set('pack.bms.fitted', 'yes', 'Plan a BMS that watches every group at rest and warns.')
          : set(
              'pack.bms.watches-rest',
              'yes',
              'Let the BMS note every group at rest and warn of one that sinks; park away from the house after it.',
            ),
      },
    ]
  },
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'pack.bms.watches-rest', now: 'no' },
      { path: 'pack.module.cell-fuses', now: 'no' },
    ],
  },
})
