import { firstLock } from '../../brakes/first-lock.ts'
import { firstLockThroughValve } from '../../brakes/lock-through-valve.ts'
import { stopByBraking } from '../../brakes/stop-by-braking.ts'
import { LAG, prescribedStop } from '../../brakes/stopping-distance.ts'
import { type Figure, standard, type Value } from '../../working/value.ts'
import { type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { type Split, split, type Valve } from './split.ts'
import { type Under, type Utilised, utilisation } from './utilisation.ts'

const TEST = {
  ...standard('stop-from', 'speed of the approval’s stop with cold brakes', 'v', 100 / 3.6, 'm/s', {
    work: 'un-r13-h',
    place: 'Annex 3, cold brakes',
    mark: 'from memory',
  }),
  shows: 'speed',
} as const
export type Stopping = {
  readonly prescribed: Figure
  /** Shortest stop without a locked wheel, by load and road. */
  readonly stops: Readonly<
    Record<string, Readonly<Partial<Record<'dry' | 'wet', { readonly distance: Figure; readonly efficiency: Figure }>>> | Gaps>
  >
}

/** Shortest stop from 100 km/h before an axle locks, under every load, dry and wet, beside the longest the approval accepts. */
export const stopping = study({
  id: 'stop',
  stage: 'brakes & steering',
  asks: 'How short can it stop before an axle locks?',
  reads: (m, ask) => ({
    utilised: ask(utilisation),
    split: ask(split),
    grips: (['dry', 'wet'] as const).map(surface => maybe({ grip: m.donor.grip[surface] })),
  }),
  answer: ({ utilised, split: s, grips }, make): Stopping => {
    const prescribed = make.all(
      'prescribed',
      prescribedStop,
      { speed: TEST },
      {
        labels: {
          cold: 'Longest stop accepted, cold brakes',
          fast: 'Longest stop accepted, high speed',
          failed: 'Longest stop accepted, assist or a circuit failed',
        },
      },
    ).figures
    const stops = Object.fromEntries(
      Object.entries(utilised.cases as Readonly<Record<string, Utilised | Gaps>>).map(([item, c]) => [
        item,
        isGaps(c)
          ? c
          : Object.fromEntries(
              (['dry', 'wet'] as const).flatMap((surface, i) => {
                const g = grips[i] as { grip: Value } | Gaps
                return isGaps(g) ? [] : [[surface, stopOn(make, `${item} ${surface}`, c.under, (s as Split).valve, g.grip)]]
              }),
            ),
      ]),
    ) as Stopping['stops']
    make.table('distances', {
      label: 'Shortest stops from 100 km/h without a locked wheel',
      columns: [
        { key: 'dry', label: 'dry', unit: 'm', shows: 'distance' },
        { key: 'wet', label: 'wet', unit: 'm', shows: 'distance' },
      ],
      rows: Object.entries(stops).flatMap(([name, c]) =>
        isGaps(c) ? [] : [{ name, cells: { dry: c.dry?.distance, wet: c.wet?.distance } }],
      ),
    })
    return { prescribed: prescribed.cold, stops }
  },
})

function stopOn(make: Maker, item: string, u: Under, valve: Valve | null, grip: Value): { distance: Figure; efficiency: Figure } {
  const stand = { rearShare: u.rearShare, height: u.height, wheelbase: u.wheelbase },
    labels = {
      front: `Front axle locks at, ${item}`,
      rear: `Rear axle locks at, ${item}`,
      first: `First lock at, ${item}`,
      efficiency: `Part of the grip used, ${item}`,
    }
  const { first, efficiency } =
    valve === null
      ? make.all('lock', firstLock, { grip, front: u.below, ...stand }, { item, labels }).figures
      : make.all('lock', firstLockThroughValve, { grip, ...valve, mass: u.mass, ...stand }, { item, labels }).figures
  return {
    efficiency,
    distance: make.work(
      'distance',
      stopByBraking,
      { speed: TEST, braking: first, lag: LAG },
      { item, label: `Stop from 100 km/h, ${item}` },
    ),
  }
}
