import { type Field, isGap } from '@ampwright/engine'
import {
  assumedNote,
  fact,
  factWhereKnown,
  figure,
  type LetterLine,
  type LetterPart,
  type Matter,
  quoted,
  row,
  type Said,
} from './pieces.ts'

const COLUMNS = ['before', 'after', 'permitted']

/** Power, masses, speed, seats and assists before and after, axle loads against what is permitted: what an inspector compares. */
export const beforeAndAfter = (k: Matter): LetterPart => ({
  heading: 'Before and after',
  columns: COLUMNS,
  lines: noted(
    [
      ...power(k),
      ...inRunningOrder(k),
      ...asWeighed(k),
      ...permitted(k),
      ...laden(k),
      ...trailer(k),
      ...topSpeed(k),
      ...seats(k),
      ...kept(k),
    ],
    k,
  ),
})
const noted = (lines: readonly LetterLine[], k: Matter): readonly LetterLine[] => [...lines, ...assumedNote(lines, k)]

/** What changes the risk of an insurer. */
export const riskBeforeAndAfter = (k: Matter): LetterPart => ({
  heading: 'Before and after',
  columns: COLUMNS.slice(0, 2),
  lines: noted(
    [
      ...power(k),
      ...inRunningOrder(k),
      ...topSpeed(k),
      ...seats(k),
      ...trailer(k),
      ...kept(k),
      ...row('Cost of the parts', undefined, figure(k, 'cost.parts', 'cost of the parts')),
    ],
    k,
  ),
})

function power(k: Matter): readonly LetterLine[] {
  const { engine } = k.m.donor
  return [
    ...row('Peak power', fact(k, engine.power), figure(k, 'against-donor.power', 'peak power of the motors')),
    ...row('Continuous power', undefined, figure(k, 'against-donor.continuous', 'continuous power of the motors')),
    ...row('Peak torque', fact(k, engine.torque), figure(k, 'against-donor.torque', 'peak torque of the motors')),
  ]
}

const inRunningOrder = (k: Matter): readonly LetterLine[] =>
  row(
    'Mass in running order',
    figure(k, 'against-donor.running-order-before', 'mass of the donor car in running order'),
    figure(k, 'against-donor.running-order', 'mass of the finished car in running order'),
  )

const asWeighed = (k: Matter): readonly LetterLine[] => [
  ...row(
    'As weighed, without driver',
    figure(k, 'weighed.total', 'donor car as weighed'),
    figure(k, 'ledger.kerb', 'kerb mass of the finished car'),
  ),
  ...row(
    'As weighed, front axle',
    figure(k, 'weighed.front', 'donor car as weighed, front axle'),
    figure(k, 'ledger.front', 'front axle of the finished car'),
  ),
  ...row(
    'As weighed, rear axle',
    figure(k, 'weighed.rear', 'donor car as weighed, rear axle'),
    figure(k, 'ledger.rear', 'rear axle of the finished car'),
  ),
]

const RATED = [
  ['total', 'total', 'mass'],
  ['front axle', 'frontAxle', 'front'],
  ['rear axle', 'rearAxle', 'rear'],
] as const

/** Permitted masses of the finished car: planned ones, else those of the donor car. */
const ratingOf = ({ m }: Matter, key: (typeof RATED)[number][1]): Field =>
  isGap(m.brief.ratings[key]) ? m.donor.ratings[key] : m.brief.ratings[key]

const permitted = (k: Matter): readonly LetterLine[] =>
  RATED.flatMap(([rated, key]) =>
    row(
      `Permitted mass, ${rated}`,
      fact(k, k.m.donor.ratings[key], `permitted mass, ${rated}`),
      fact(k, ratingOf(k, key), `permitted mass, ${rated}`),
    ),
  )

/** Each load case by total and axles, against what is permitted. */
function laden(k: Matter): readonly LetterLine[] {
  const loads = Object.keys(k.m.brief.loads)
  return loads.flatMap(load =>
    RATED.flatMap(([rated, key, of]) => {
      const limit = fact(k, ratingOf(k, key))
      return row(
        ['Laden ', quoted(load), `, ${rated}`],
        undefined,
        figure(k, `load.${of}@${load}`, `load of ${rated}, ${load}`),
        'open' in limit ? undefined : limit,
      )
    }),
  )
}

/** What the donor car may draw, where it may: the plan states nothing else, so that is asked for afterwards. */
function trailer(k: Matter): readonly LetterLine[] {
  const { ratings, towing } = k.m.donor
  return [
    ...drawn('Braked trailer', ratings.towBraked),
    ...drawn('Unbraked trailer', ratings.towUnbraked),
    ...drawn('Car and trailer together', ratings.train),
    ...drawn('Load on the coupling', ratings.noseLoad),
    ...drawn('D value of the coupling', towing.couplingStrength),
  ]
  function drawn(label: string, field: Field): readonly LetterLine[] {
    const before = factWhereKnown(k, field)
    return before === undefined ? [] : row(label, before, quoted('as before, if you agree'))
  }
}

function topSpeed(k: Matter): readonly LetterLine[] {
  const before = fact(k, k.m.donor.topSpeed),
    goals = Object.entries(k.m.brief.goals).flatMap(([name, g]) => (g?.kind === 'top speed' ? [name] : []))
  const after = (goals.length ? goals : ['']).map(
    (g): ReturnType<typeof figure> => figure(k, `top-speed.speed@${g}`, 'top speed of the finished car'),
  )
  return after.flatMap((a, i) => row(i === 0 ? 'Top speed' : ['Top speed, ', quoted(goals[i] as string)], before, a))
}

const seats = (k: Matter): readonly LetterLine[] =>
  row('Seats', figure(k, 'against-donor.seats-before', 'seats of the donor car'), fact(k, k.m.brief.seats))

/** What took its power from the engine, and what of the body stays. */
function kept(k: Matter): readonly LetterLine[] {
  const { brakes, steering } = k.m.donor,
    { keeps } = k.m.brief
  const both = (label: string, before: Field<string>, after: Field<string>): readonly LetterLine[] =>
    row(label, fact(k, before), afterOf(k, before, after))
  return [
    ...both('Brake assist', brakes.assist as Field<string>, brakes.assistAfter as Field<string>),
    ...both('Steering assist', steering.assist as Field<string>, steering.assistAfter as Field<string>),
    ...both('Anti-lock brakes', brakes.abs as Field<string>, brakes.absAfter as Field<string>),
    ...row('Body and frame as they were, nothing cut, drilled or welded', undefined, fact(k, keeps.body)),
    ...row('Outer dimensions as they were', undefined, fact(k, keeps.dimensions)),
  ]
}
/** What was never there needs no successor. */
const afterOf = (k: Matter, before: Field<string>, after: Field<string>): Said | ReturnType<typeof fact> | undefined =>
  !isGap(before) && before.value === 'none' && isGap(after) ? undefined : fact(k, after)
