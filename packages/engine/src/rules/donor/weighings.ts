import { type Weighings, weighings } from '../../studies/donor/weighings.ts'
import { type Gaps, isGaps } from '../../studies/study.ts'
import { type Fact, type Figure, standard } from '../../working/value.ts'
import { type Judgement, type Remedy, rule } from '../rule.ts'

const practice = (place: string) => ({ work: 'practice', place, mark: 'common practice' }) as const
const APART = standard('weighings-apart', 'two weighings of one axle, apart', 'Δm', 10, 'kg', practice('accuracy of an axle weighbridge'))
const share = (name: string, label: string, value: number, place: string): Fact => ({
  ...standard(name, label, 's', value, '1', practice(place)),
  shows: 'share',
})
const LEFT = {
  low: share('left-least', 'least share on the left', 0.45, 'an empty car stands within a twentieth of level, left and right'),
  high: share('left-most', 'greatest share on the left', 0.55, 'an empty car stands within a twentieth of level, left and right'),
} as const
const FRONT = {
  low: share('front-least', 'least share on the front axle', 0.3, 'empty cars carry three to seven tenths on the front axle'),
  high: share('front-most', 'greatest share on the front axle', 0.7, 'empty cars carry three to seven tenths on the front axle'),
} as const
const PAPERS = {
  low: standard(
    'papers-least',
    'least weighed over the papers',
    'r',
    0.9,
    '1',
    practice('equipment and options: within a tenth of the papers'),
  ),
  high: standard(
    'papers-most',
    'most weighed over the papers',
    'r',
    1.1,
    '1',
    practice('equipment and options: within a tenth of the papers'),
  ),
} as const

const AGAIN: readonly Remedy[] = [
  { do: 'measure', says: 'Look for a slip of the pen, then weigh again: level ground, known fuel, nobody aboard.', path: 'donor.weighing' },
]

function between(
  item: string,
  about: readonly string[],
  found: Figure | Gaps,
  limits: { readonly low: Fact; readonly high: Fact },
  says: string,
): readonly Judgement[] {
  if (isGaps(found)) return [{ item, about, says: 'This cannot be held against anything yet.', missing: found }]
  const end = (side: 'at least' | 'at most', limit: Fact, name: string): Judgement => ({
    item: `${item}, ${name} end`,
    about,
    found,
    side,
    limit,
    says,
    remedies: AGAIN,
  })
  return [end('at least', limits.low, 'lower'), end('at most', limits.high, 'upper')]
}

function judged({ apart, left, front, papers }: Weighings): readonly Judgement[] {
  const about = ['donor.weighing']
  return [
    ...Object.entries(apart).map(
      ([item, found]): Judgement => ({
        item,
        about,
        found,
        side: 'at most',
        limit: APART,
        says: 'The scales under its two wheels and the axle as a whole are {found} apart; {limit} is what scales explain.',
        remedies: AGAIN,
      }),
    ),
    // Weighed by axles there is no left and right, and none is asked for.
    ...(isGaps(left) && left.gaps.length === 0
      ? []
      : between('left and right', about, left, LEFT, '{found} stands on the left wheels; an empty car has from {low} to {high} there.')),
    ...between('front and rear', about, front, FRONT, '{found} stands on the front axle; an empty car has from {low} to {high} there.'),
    ...(papers === null
      ? []
      : between(
          'papers',
          [...about, 'donor.registered-mass'],
          papers,
          PAPERS,
          'Weighed and in running order it has {found} times the mass on its papers; from {low} to {high} is equipment.',
        )),
  ].map(j => ({ ...j, slots: slotsOf(j.item ?? '') }))
}
const slotsOf = (item: string): NonNullable<Judgement['slots']> =>
  item.startsWith('left') ? LEFT : item.startsWith('front and') ? FRONT : item.startsWith('papers') ? PAPERS : {}

export const weighingsAgree = rule({
  id: 'weighings-agree',
  title: 'The weighings of the donor car agree with each other, its papers and what cars weigh',
  stage: 'donor',
  harm: 'S2',
  hazards: [],
  source: { work: 'practice', place: 'one slip on the scales moves kerb mass, axle loads and range' },
  judgements: (_, ask) => {
    const answer = ask(weighings)
    return isGaps(answer)
      ? [{ about: ['donor.weighing'], says: 'The donor car has not been weighed yet.', missing: answer }]
      : judged(answer)
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'donor.weighing.front', now: '445 ± 10 kg' }], item: 'front axle' },
})
