import type { Model } from '../../model/model.ts'
import type { ModuleRecord } from '../../model/pack.ts'
import type { Source } from '../../sources.ts'
import type { Salvage } from '../../studies/pack/salvage.ts'
import { cellsOf, recordsInPack } from '../../studies/pack/salvaged-modules.ts'
import { type Gaps, isGaps } from '../../studies/study.ts'
import { assumptions } from '../../working/leaves.ts'
import { type Fact, isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import { limitOf, open } from './answers.ts'
import { completed, FIRE, GRADING, judgedLot, named, ofSalvage } from './salvage-judged.ts'

const FALL = limitOf('fall-above-median', 'faster than the median, rest voltage of a cell in a day', 0.002, 'V', GRADING)
const APART = limitOf('rest-apart', 'rest voltages apart before joining, one cell', 0.05, 'V', GRADING)
const rest = (chemistry: string): Fact =>
  chemistry === 'LFP'
    ? limitOf('received-lfp', 'lowest rest voltage of a used LFP cell', 2.0, 'V', GRADING)
    : chemistry === 'LTO'
      ? limitOf('received-lto', 'lowest rest voltage of a used LTO cell', 1.5, 'V', GRADING)
      : limitOf('received', 'lowest rest voltage of a used cell', 2.5, 'V', GRADING)

/** Rest voltages of an LFP cell between a third of its charge and nearly full, the two branches of its curve allowed for: a voltmeter says nothing there. */
const FLAT: Source = { work: 'bpx-lfp-2022', place: 'a third of the charge up; cells of other kinds rest some 30 mV higher there' }
const FLAT_FROM = limitOf('flat-from', 'rest voltage where the flat of LFP begins', 3.26, 'V', FLAT)
const FLAT_TO = limitOf('flat-to', 'rest voltage where the flat of LFP ends', 3.4, 'V', FLAT)
/** Rest voltage of one cell of a module. */
function restOfCell({ pack }: Model, r: ModuleRecord): number | undefined {
  const n = cellsOf(pack, r)
  return isGap(n) || isGap(r.restVoltage) ? undefined : r.restVoltage.value / n.value
}
/** The first module that rests where its voltage does not tell its charge. */
const onTheFlat = (m: Model): string | undefined => {
  const { chemistry } = m.pack.module
  if (isGap(chemistry) || chemistry.value !== 'LFP') return undefined
  return recordsInPack(m.pack).find(([, r]) => {
    const cell = restOfCell(m, r)
    return cell !== undefined && cell > FLAT_FROM.value && cell < FLAT_TO.value
  })?.[0]
}

export const restMatched = rule({
  id: 'salvaged-voltage-matched',
  title: 'Modules are levelled before they are put in series',
  stage: 'pack',
  harm: 'S2',
  hazards: ['A9'],
  source: GRADING,
  judgements: ofSalvage((m, s) => {
    const { chemistry } = m.pack.module,
      about = ['pack.salvage', 'pack.module.chemistry', 'pack.levelled']
    if (isGaps(s)) return [open(about, s)]
    if (isGaps(s.apart)) return s.apart.gaps.length ? [open(about, s.apart)] : doesNotApply('one module is no lot', about)
    if (isGap(chemistry)) return [open(about, chemistry)]
    const flat = onTheFlat(m),
      { levelled } = m.pack
    // Far apart is far apart on the flat too; only a small difference says nothing there.
    if (flat !== undefined && s.apart.value <= APART.value) {
      if (isGap(levelled)) return [open(about, levelled)]
      return [
        {
          about,
          holds: levelled.value === 'charged full one by one',
          rests: [chemistry, levelled],
          says: 'Module {flat} rests where the voltage of {chemistry} does not tell its charge; levelled: {levelled}.',
          slots: { flat: named(m, flat), chemistry, levelled },
          remedies: [
            {
              do: 'act',
              says: 'Charge every module full by itself until the current dies away; or count the charge of each. Then join them.',
            },
          ],
        },
      ]
    }
    return [
      {
        about,
        found: s.apart,
        side: 'at most',
        limit: APART,
        says: 'At rest the modules are up to {found} apart for each cell; up to {limit} the balancer can level.',
        remedies: [{ do: 'act', says: 'Charge each module to the same voltage by itself, wait a day, measure again.' }],
      },
    ]
  }),
  spoil: { sample: 'lapwing', edits: completed({ 'rest-voltage': '21.6 V', 'rest-voltage-later': '21.596 V' }) },
})
/** Rest voltages of one cell between which its fall tells a leak, and the fall that may mean five per cent in thirty days there, by the flattest published curve. */
const LEAK = {
  nickel: {
    from: limitOf('leak-told-from', 'lowest rest voltage that tells a leak, nickel cells', 3.5, 'V', GRADING),
    to: limitOf('leak-told-to', 'highest rest voltage that tells a leak, nickel cells', 3.85, 'V', GRADING),
    fall: limitOf('leak-alone', 'fall of the rest voltage in a day that may mean 5 % a month, nickel cells', 0.68e-3, 'V', {
      work: 'bpx-nmc-2022',
      place: '5 % in thirty days where the curve rises by 0.41 V, at 30 % charge; recomputed',
    }),
  },
  LFP: {
    from: limitOf('leak-told-from-lfp', 'lowest rest voltage that tells a leak, LFP', 3.18, 'V', GRADING),
    to: limitOf('leak-told-to-lfp', 'highest rest voltage that tells a leak, LFP', 3.26, 'V', GRADING),
    fall: limitOf('leak-alone-lfp', 'fall of the rest voltage in a day that may mean 5 % a month, LFP', 0.28e-3, 'V', {
      work: 'bpx-lfp-2022',
      place: '5 % in thirty days where the curve rises by 0.166 V, at 30 % charge; recomputed',
    }),
  },
} as const
const LEAK_ALONE = limitOf('leak-in-a-month', 'self-discharge of a used module in thirty days', 0.05, '1', GRADING, 'share')
const REJECT = 'Reject it: a leak inside a cell is a short that grows. Store it outdoors.'

/** A module by itself: its leak where the cell’s own curve is known, else its fall where the voltage tells anything. */
function leakAlone(m: Model, s: Salvage | Gaps): readonly Judgement[] {
  const item = 'by itself',
    about = ['pack.salvage', 'pack.module.chemistry', 'pack.module.open-circuit'],
    { chemistry, openCircuit } = m.pack.module
  if (isGaps(s)) return [open(about, s, item)]
  if (!isGap(openCircuit) && assumptions(openCircuit).length === 0)
    return judgedLot(
      m,
      s,
      x => x.leak,
      'rest-voltage-later',
      'at most',
      LEAK_ALONE,
      'By the curve of its cells module {worst} loses {found} of its charge in thirty days; from {limit} on it is rejected.',
      REJECT,
      item,
    )
  if (isGap(chemistry)) return [open(about, chemistry, item)]
  if (chemistry.value === 'LTO')
    return [
      open(
        about,
        {
          gap: true,
          path: 'pack.module.open-circuit',
          label: 'open-circuit voltage of these cells over charge; without it the fall of a titanate cell says nothing',
          until: 'before the part is bought',
        },
        item,
      ),
    ]
  const told = chemistry.value === 'LFP' ? LEAK.LFP : LEAK.nickel
  const blind = recordsInPack(m.pack).find(([, r]) => {
    const cell = restOfCell(m, r)
    return cell !== undefined && (cell < told.from.value || cell > told.to.value)
  })
  if (blind && !isGaps(s.alone))
    return [
      open(
        about,
        {
          gap: true,
          path: `pack.salvage.${blind[0]}.rest-voltage`,
          label:
            chemistry.value === 'LFP'
              ? 'both rest voltages again, every module at about a fifth of its charge: higher up the voltage of LFP tells no leak. Or charge all full, wait 28 days and count what comes out'
              : 'both rest voltages again, every module at 30 to 60 % charge: elsewhere the voltage tells a leak badly',
          until: 'before the part is bought',
          measure: { tool: 'meter, a day and two weeks after charging, same shelf', accuracy: '± 1 mV', minutes: 30 },
        },
        item,
      ),
    ]
  return judgedLot(
    m,
    s,
    x => x.alone,
    'rest-voltage-later',
    'at most',
    told.fall,
    'Module {worst} falls {found} a day for each cell; from {limit} on it may lose more than a twentieth of its charge in thirty days.',
    `${REJECT} In doubt charge it full, wait 28 days outdoors and count what comes out.`,
    item,
  )
}

export const holdsCharge = rule({
  id: 'salvaged-module-holds-charge',
  title: 'No salvaged module loses charge by itself or faster than the others',
  stage: 'pack',
  harm: 'S3',
  hazards: ['A12'],
  source: GRADING,
  caution: FIRE,
  judgements: ofSalvage((m, s) => [
    ...judgedLot(
      m,
      s,
      x => x.fall,
      'rest-voltage-later',
      'at most',
      FALL,
      'At rest module {worst} falls {found} a day faster for each cell than the median of the lot; from {limit} on it is rejected.',
      REJECT,
    ),
    ...judgedLot(
      m,
      s,
      x => x.beside,
      'rest-voltage-later',
      'at most',
      isGaps(s) ? s : isGaps(s.beside) ? s.beside : s.beside.allowed,
      'Module {worst} falls {found} a day for each cell; the others allow {limit}, three times their median.',
      REJECT,
      'beside the others',
    ),
    ...leakAlone(m, s),
  ]),
  spoil: { sample: 'badger', edits: [{ path: 'pack.salvage.b05.rest-voltage-later', now: '29.364 V' }], item: 'beside the others' },
})

export const neverDeepEmpty = rule({
  id: 'salvaged-cells-never-flat',
  title: 'No salvaged module was received flat',
  stage: 'pack',
  harm: 'S3',
  hazards: ['A12'],
  source: GRADING,
  caution: `Copper dissolves in a cell kept flat and comes back as a short. ${FIRE}`,
  judgements: ofSalvage((m, s) => {
    const { chemistry } = m.pack.module
    return isGap(chemistry)
      ? [open(['pack.module.chemistry'], chemistry)]
      : judgedLot(
          m,
          s,
          x => x.rest,
          'rest-voltage',
          'at least',
          rest(chemistry.value),
          'Module {worst} rests at {found} for each cell; below {limit} copper may have dissolved. Look at every group: one low cell hides in the mean.',
          'Reject it; never charge it.',
        )
  }),
  spoil: { sample: 'lapwing', edits: completed({ 'rest-voltage': '13.2 V', 'rest-voltage-later': '13.19 V' }) },
})
