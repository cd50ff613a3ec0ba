import { stance } from '../../studies/donor/stance.ts'
import { from, isGaps } from '../../studies/study.ts'
import { rule } from '../rule.ts'

export const tipsNoSooner = rule({
  id: 'tips-no-sooner',
  title: 'It tips no sooner than cars of the band the donor car stood in',
  stage: 'donor',
  harm: 'S2',
  hazards: [],
  source: { work: 'nhtsa-rollover', place: 'bands of the static stability factor', mark: 'from memory' },
  judgements: (_, ask) => {
    const about = ['donor.centre-height', 'donor.track-front', 'donor.track-rear', 'donor.added', 'pack.boxes'],
      found = from(ask(stance), s => s.stability)
    if (isGaps(found)) return [{ about, says: 'How easily it tips cannot be said yet.', missing: found }]
    const { before, now, band } = found
    return [
      {
        about,
        found: now,
        side: 'at least',
        limit: band,
        says: 'Its static stability factor is {found} after {before}; its band starts at {limit}.',
        slots: { before },
        remedies: [{ do: 'act', says: 'Put heavy parts lower.' }],
      },
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.boxes.tank.z', now: '1100 mm' }] },
})
