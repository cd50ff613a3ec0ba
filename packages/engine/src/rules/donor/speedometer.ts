import { tyres } from '../../studies/donor/tyres.ts'
import { from, isGaps } from '../../studies/study.ts'
import { isGap, standard } from '../../working/value.ts'
import { doesNotApply, rule } from '../rule.ts'

export const speedometerDriven = rule({
  id: 'speedometer-driven',
  title: 'Something still drives the speedometer',
  stage: 'donor',
  harm: 'S1',
  hazards: [],
  source: { work: 'practice', place: 'the speedometer was driven by a part that comes out' },
  judgements: ({ donor, drive }) => {
    const units = Object.values(drive.units),
      about = ['donor.speedometer-drive', 'donor.speedometer-drive-after', 'drive.units'],
      before = donor.speedometerDrive,
      after = donor.speedometerDriveAfter
    if (units.length === 0) return doesNotApply('no motor is chosen yet', ['drive.units'])
    if (isGap(before)) return [{ about, says: 'What drives the speedometer is not known yet.', missing: before }]
    if (before.value === 'wheels') return doesNotApply('the speedometer takes its speed from the wheels', about)
    const open = units.flatMap(u => (isGap(u.through) ? [u.through] : []))
    // A kept gearbox or transfer case keeps the drive on its output.
    if (units.some(u => !isGap(u.through) && u.through.value !== 'drive unit'))
      return [{ about, holds: true, rests: [before], says: 'The shaft that drives the speedometer stays.' }]
    if (open.length) return [{ about, says: 'Whether its drive stays is not decided yet.', missing: { gaps: open } }]
    if (isGap(after))
      return [
        { about, says: 'The speedometer loses its drive: the gearbox comes out, and what drives it then is not decided.', missing: after },
      ]
    const holds = after.value !== 'none'
    return [
      {
        about,
        holds,
        rests: [before, after],
        says: holds
          ? 'The gearbox that drove the speedometer comes out; then: {after}.'
          : 'The gearbox that drove the speedometer comes out, and nothing takes its place.',
        slots: { after },
        remedies: [
          {
            do: 'set',
            says: 'Fit a speed sender, and set the speedometer to its pulses.',
            sets: [{ path: 'donor.speedometer-drive-after', to: { word: 'speed sender' } }],
          },
        ],
      },
    ]
  },
  spoil: {
    sample: 'wren',
    edits: [
      { path: 'donor.speedometer-drive', now: 'output shaft' },
      { path: 'donor.speedometer-drive-after', now: 'none' },
    ],
  },
})

const TRUE = standard('speedometer-shows-before', 'as before', 'k_s', 1, '1', {
  work: 'un-r39',
  place: 'speed shown is never less than the true speed',
  mark: 'from memory',
})

export const speedometerShowsEnough = rule({
  id: 'speedometer-shows-enough',
  title: 'The speedometer shows no less than it did before',
  stage: 'donor',
  harm: 'S1',
  hazards: [],
  source: { work: 'un-r39', place: 'speed shown is never less than the true speed', mark: 'from memory' },
  judgements: (_, ask) => {
    const found = from(ask(tyres), t => t.speedometer),
      about = ['donor.tyre', 'donor.tyre-before', 'donor.speedometer-drive']
    if (isGaps(found)) return [{ about, says: 'What it shows against before cannot be said yet.', missing: found }]
    return [
      {
        about,
        found,
        side: 'at least',
        limit: TRUE,
        says: 'At the same speed it shows {found} times what it showed before. It must never show less than the true speed.',
        remedies: [
          {
            do: 'act',
            says: 'Hold it against GPS on the road; where it shows too little, have it set or geared, or fit the tyre it was set for.',
          },
        ],
        eased: 'how much it showed too much before is not known',
      },
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'donor.tyre-before', now: '185/55 R14 80H' }], turns: 'marginal' },
})
