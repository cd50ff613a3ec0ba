import type { DrivenWheels } from '../../model/donor.ts'
import type { DriveUnit } from '../../model/drive.ts'
import { isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'

const AXLES: Readonly<Record<DrivenWheels, readonly string[]>> = {
  front: ['front'],
  rear: ['rear'],
  'part-time 4x4': ['both', 'rear'],
  all: ['both'],
}

/** Units that drive through parts of the donor car end where those parts end. */
export const layoutFits = rule({
  id: 'layout-fits',
  title: 'Torque through kept parts ends at the axle they drive',
  stage: 'donor',
  harm: 'S2',
  hazards: [],
  source: { work: 'practice', place: 'layout of the donor car' },
  judgements: m => {
    const units = Object.entries(m.drive.units).filter(([, u]) => !isGap(u.through) && u.through.value !== 'drive unit'),
      driven = m.donor.drivenWheels
    if (units.length === 0) return doesNotApply('nothing of the old driveline is driven through', ['drive.units'])
    return units.map(([item, u]): Judgement => {
      const about = ['donor.driven-wheels', `drive.units.${item}.axle`, `drive.units.${item}.transfer`]
      if (isGap(driven)) return { item, about, says: 'Which wheels were driven is not known yet.', missing: driven }
      if (isGap(u.axle)) return { item, about, says: 'Which axle it drives is not decided yet.', missing: u.axle }
      const fits = AXLES[driven.value],
        transfer = transferFits(u, driven.value)
      const holds = fits.includes(u.axle.value) && transfer
      return {
        item,
        about,
        holds,
        rests: [driven, u.axle, ...(isGap(u.transfer) ? [] : [u.transfer])],
        says: holds
          ? 'The axle it drives is one the kept parts drive.'
          : transfer
            ? 'It drives through kept parts, but they end at another axle.'
            : 'It goes through a transfer case the donor car does not have.',
        remedies: holds
          ? []
          : transfer
            ? [
                {
                  do: 'set',
                  says: 'Name the axle the kept parts drive.',
                  sets: [{ path: `drive.units.${item}.axle`, to: { word: fits[0] as string } }],
                },
              ]
            : [{ do: 'set', says: 'Leave the transfer case out.', sets: [{ path: `drive.units.${item}.transfer`, to: { word: 'none' } }] }],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'drive.units.main.axle', now: 'front' }], item: 'main' },
})

const transferFits = ({ transfer }: DriveUnit, driven: DrivenWheels): boolean =>
  isGap(transfer) || transfer.value === 'none' || driven === 'part-time 4x4' || driven === 'all'
