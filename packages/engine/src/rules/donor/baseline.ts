import type { Model } from '../../model/model.ts'
import { coastDown } from '../../studies/donor/coast-down.ts'
import { coastDownRuns } from '../../studies/donor/coast-down-runs.ts'
import { isGaps } from '../../studies/study.ts'
import { isGap, standard } from '../../working/value.ts'
import { doesNotApply, type Judgement, type Remedy, rule } from '../rule.ts'

const GTR = { work: 'un-gtr-15', place: 'Annex 4, 4.3: statistical accuracy at each reference speed', mark: 'from memory' } as const
const ENOUGH = standard('coast-down-accuracy', 'Statistical accuracy a coast-down is continued to', 'p_max', 0.03, '1', GTR)

/** Times give the force for each kilogram; the kilograms are found on the scales. */
const weighAsTested = (m: Model): readonly Remedy[] =>
  isGap(m.donor.coastDown.mass)
    ? [
        {
          do: 'measure',
          says: 'Weigh the car as it was tested, driver and logger aboard: the times tell how fast it slowed, not what force that took.',
          path: 'donor.coast-down.mass',
        },
      ]
    : []

export const roadLoadMeasured = rule({
  id: 'road-load-measured',
  title: 'What holds the car back was measured while it still drove',
  stage: 'donor',
  harm: 'S1',
  hazards: [],
  source: { work: 'practice', place: 'coast-down before the engine comes out' },
  judgements: (m, ask) => {
    const about = ['donor.coast-down.steps', 'donor.drag-area'],
      test = ask(coastDown),
      area = m.donor.dragArea
    if (!isGaps(test)) return [{ about, holds: true, rests: [test.f0, test.f1, test.f2], says: 'Its own coast-down governs.' }]
    const begun = m.donor.coastDown.given
    if (isGap(area)) return [{ about, says: 'Neither a coast-down nor a drag area is known.', missing: test }]
    const measured = area.origin?.how === 'measured'
    return [
      // A coast-down that was driven and lacks a value is worth more than its gap: the finding asks for it by name.
      ...(begun
        ? [{ item: 'coast-down', about, says: 'The coast-down cannot be used yet.', missing: test, remedies: weighAsTested(m) }]
        : []),
      {
        about,
        holds: true,
        marginal: !measured,
        rests: [area],
        says: measured
          ? 'The drag area was measured on this car.'
          : 'The drag area is not this car’s own: range and consumption rest on it.',
        remedies: [{ do: 'measure', says: 'Coast it down both ways before the engine comes out.', path: 'donor.coast-down.steps' }],
      },
    ]
  },
  spoil: { sample: 'otter', edits: [{ path: 'donor.drag-area', now: '0.70 ± 0.06 m2 (assumed, class of estates)' }], turns: 'marginal' },
})

export const coastDownRepeats = rule({
  id: 'coast-down-repeats',
  title: 'The coast-down runs agree with each other',
  stage: 'donor',
  harm: 'S1',
  hazards: [],
  source: GTR,
  judgements: (m, ask) => {
    const about = ['donor.coast-down.steps']
    if (Object.keys(m.donor.coastDown.steps).length === 0) return doesNotApply('no coast-down runs are written down', about)
    const runs = ask(coastDownRuns)
    if (isGaps(runs)) return [{ about, says: 'The runs cannot be compared yet.', missing: runs }]
    return Object.entries(runs.steps).map(([item, step]) => ({
      item,
      about: [`donor.coast-down.steps.${item}`],
      found: isGaps(step) ? step : step.accuracy,
      side: 'at most' as const,
      limit: ENOUGH,
      says: 'The mean of the pairs is known to {found}; runs are added until it is {limit}.',
      remedies: [{ do: 'measure' as const, says: 'Add pairs of runs, on a calmer day.', path: `donor.coast-down.steps.${item}` }],
    }))
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'donor.coast-down.steps.75-to-65.out-2', now: '8.6 s' }], item: '75-to-65' },
})

export const coastDownInReason = rule({
  id: 'coast-down-in-reason',
  title: 'The coast-down shows a car that is held back, the more so the faster it goes',
  stage: 'donor',
  harm: 'S2',
  hazards: [],
  source: { work: 'definition', place: 'road load: rolling resistance and air drag both take power' },
  judgements: (m, ask) => {
    const { coastDown: c } = m.donor,
      byRuns = Object.keys(c.steps).length > 0,
      about = byRuns ? ['donor.coast-down.steps'] : ['donor.coast-down.f0', 'donor.coast-down.f2']
    if (!byRuns && [c.f0, c.f1, c.f2].every(isGap)) return doesNotApply('no coast-down is written down', ['donor.coast-down'])
    const test = ask(coastDown),
      runs = ask(coastDownRuns)
    const again = byRuns ? 'Look for a slip in the speeds and times of the steps.' : 'Look for a slip in the coefficients and their units.'
    const item = 'coefficients'
    return [
      isGaps(test)
        ? { item, about, says: 'What holds the car back cannot be said yet.', missing: test, remedies: weighAsTested(m) }
        : {
            item,
            about,
            holds: test.f0.value > 0 && test.f2.value > 0,
            rests: [test.f0, test.f2],
            says: 'Its rolling part comes out at {rolling}, its air part at {air}. Either below nothing is a car that pushes itself.',
            slots: { rolling: test.f0, air: test.f2 },
            remedies: [{ do: 'act', says: again }],
          },
      // The times alone say how fast it slowed, mass or no mass.
      ...Object.entries(isGaps(runs) ? {} : runs.steps).flatMap(([step, run]): readonly Judgement[] =>
        isGaps(run)
          ? []
          : [
              {
                item: step,
                about: [`donor.coast-down.steps.${step}`],
                holds: run.slowing.value > 0,
                rests: [run.slowing],
                says: 'In this step the car slowed by {slowing}.',
                slots: { slowing: run.slowing },
                remedies: [{ do: 'act', says: 'A step starts at its higher speed: look at from and to.' }],
              },
            ],
      ),
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'donor.coast-down.steps.115-to-105.to', now: '10.5 km/h' }], item: 'coefficients' },
})
