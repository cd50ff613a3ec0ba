import type { DriveUnit } from '../../model/drive.ts'
import { type AnyValue, isGap } from '../../working/value.ts'
import { doesNotApply, rule } from '../rule.ts'

/** A drive unit turns with its wheels unless it uncouples; behind a kept gearbox or transfer case there is a neutral. */
const coupled = (u: DriveUnit): boolean =>
  !isGap(u.through) &&
  !(isGap(u.disconnect) ? false : u.disconnect.value === 'yes') &&
  (u.through.value === 'drive unit' || (u.through.value === 'single reduction' && (isGap(u.transfer) || u.transfer.value === 'none')))

export const recoveryOnWheels = rule({
  id: 'recovery-on-wheels',
  title: 'It is not towed with a motor turning',
  stage: 'donor',
  harm: 'S2',
  hazards: [],
  source: { work: 'practice', place: 'wheels that turn a coupled motor' },
  caution:
    'A motor turned by the wheels makes voltage and heat with everything switched off. Put the way to recover the car on its rescue sheet and in the owner’s book.',
  judgements: m => {
    const about = ['donor.towing.recovery', 'drive.units'],
      units = Object.values(m.drive.units)
    if (units.length === 0) return doesNotApply('no drive unit is planned yet', about)
    const turning = units.filter(coupled),
      way = m.donor.towing.recovery
    if (turning.length === 0) return doesNotApply('every motor can be uncoupled from the wheels', about)
    if (isGap(way)) return [{ about, says: 'How the car is recovered when stranded is not decided yet.', missing: way }]
    const axles = new Set(turning.flatMap(u => (isGap(u.axle) ? [] : u.axle.value === 'both' ? ['front', 'rear'] : [u.axle.value])))
    const holds = way.value === 'on a flatbed' || (way.value === 'driven wheels raised' && axles.size < 2)
    const rests: readonly AnyValue[] = [way, ...turning.flatMap((u): AnyValue[] => (isGap(u.axle) ? [] : [u.axle]))]
    return [
      {
        about,
        holds,
        rests,
        says: holds
          ? 'When stranded it is moved with no motor turning.'
          : 'When stranded it is to be towed with a coupled motor turning on its wheels.',
        remedies: [
          {
            do: 'set',
            says: 'Recover it on a flatbed only, and say so on the rescue sheet.',
            sets: [{ path: 'donor.towing.recovery', to: { word: 'on a flatbed' } }],
          },
        ],
      },
    ]
  },
  spoil: { sample: 'otter', edits: [{ path: 'donor.towing.recovery', now: 'driven wheels raised' }] },
})
