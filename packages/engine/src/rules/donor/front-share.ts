import type { DrivenWheels, EnginePosition } from '../../model/donor.ts'
import { weighings } from '../../studies/donor/weighings.ts'
import { isGaps } from '../../studies/study.ts'
import { type Fact, isGap, standard } from '../../working/value.ts'
import { type Judgement, rule } from '../rule.ts'

const USUAL = {
  work: 'practice',
  place: 'weight on the front axle of empty cars by the place of the engine',
  mark: 'common practice',
} as const
const share = (name: string, label: string, value: number): Fact => ({
  ...standard(`front-share.${name}`, label, 's', value, '1', USUAL),
  shows: 'share',
})
const band = (name: string, layout: string, low: number, high: number) => ({
  low: share(`${name}-least`, `usual least share on the front axle, ${layout}`, low),
  high: share(`${name}-most`, `usual greatest share on the front axle, ${layout}`, high),
})
const FRONT_DRIVEN = band('front-driven', 'engine ahead of driven front wheels', 0.55, 0.65)
const BANDS: Readonly<Record<EnginePosition, ReturnType<typeof band>>> = {
  'transverse front': FRONT_DRIVEN,
  'longitudinal front': band('longitudinal', 'engine along, in front', 0.5, 0.57),
  rear: band('rear', 'engine in the rear', 0.35, 0.45),
  mid: band('mid', 'engine between the axles', 0.4, 0.47),
}
const bandOf = (position: EnginePosition, driven: DrivenWheels | undefined) =>
  position === 'longitudinal front' && driven === 'front' ? FRONT_DRIVEN : BANDS[position]

export const frontShareByLayout = rule({
  id: 'front-share-by-layout',
  title: 'The weighing puts as much on the front axle as cars of this layout carry there',
  stage: 'donor',
  harm: 'S1',
  hazards: [],
  source: USUAL,
  judgements: (m, ask) => {
    const about = ['donor.weighing', 'donor.engine-position', 'donor.driven-wheels'],
      answer = ask(weighings),
      { enginePosition: position, drivenWheels: driven } = m.donor,
      says = 'Whether the weighing fits the layout cannot be said yet.'
    if (isGaps(answer)) return [{ about, says, missing: answer }]
    if (isGaps(answer.front)) return [{ about, says, missing: answer.front }]
    if (isGap(position)) return [{ about, says, missing: position }]
    const found = answer.front,
      { low, high } = bandOf(position.value, isGap(driven) ? undefined : driven.value)
    const end = (item: string, side: 'at least' | 'at most', limit: Fact): Judgement => ({
      item,
      about,
      found,
      side,
      limit,
      says: '{found} stands on the front axle; cars with the engine {position}, in running order and empty, usually have from {low} to {high} there.',
      slots: { position, low, high },
      remedies: [
        {
          do: 'measure',
          says: 'Look whether the axles were swapped or the engine was out already, then weigh again: level ground, known fuel, nobody aboard.',
          path: 'donor.weighing',
        },
      ],
    })
    return [end('lower end', 'at least', low), end('upper end', 'at most', high)]
  },
  spoil: {
    sample: 'wren',
    edits: [
      { path: 'donor.weighing.front', now: '349 ± 5 kg (measured, weighbridge)' },
      { path: 'donor.weighing.rear', now: '463 ± 5 kg (measured, weighbridge)' },
    ],
    item: 'lower end',
  },
})
