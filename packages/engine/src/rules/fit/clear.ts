import { CLEARANCE_HABITS } from '../../studies/fit/habits.ts'
import type { BlockKind } from '../../model/fit.ts'
import { type Beside, gaps } from '../../studies/fit/gaps.ts'
import { keptFreeOf, readsOf } from '../../studies/fit/kept-free.ts'
import { airBetween, type Pair } from '../../studies/fit/pairs.ts'
import { type AtWheel, wheelHouses } from '../../studies/fit/wheel-houses.ts'
import { gapsIn, isGaps } from '../../studies/study.ts'
import { type Fact, isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, type Rule, rule } from '../rule.ts'
import { anyShape, FITTING, nameOfShape, NO_SHAPE, placeOf, unplaced } from './shapes.ts'

const MOVE = { do: 'act', says: 'Move one of the two, turn it, or take a smaller part.' } as const

export const partsClear = rule({
  id: 'parts-clear-of-each-other',
  title: 'Parts stand clear of each other',
  stage: 'fit',
  harm: 'S2',
  hazards: [],
  source: FITTING,
  judgements: (m, ask) => {
    if (!anyShape(m)) return NO_SHAPE()
    const found = ask(gaps)
    if (isGaps(found)) return [{ about: ['fit.bodies'], says: 'The air between the parts cannot be told yet.', missing: found }]
    return [
      ...(found.pairs as readonly Pair[]).map(({ one, other, gap }): Judgement => {
        const moves = one.kind === 'motor' || other.kind === 'motor',
          item = `${one.name} and ${other.name}`,
          about = [...placeOf(m, one.name), ...placeOf(m, other.name)],
          slots = { one: nameOfShape(one.name), other: nameOfShape(other.name) }
        if (isGap(gap))
          return { item, about, says: 'The air between {one} and {other} by their meshes is being measured.', slots, missing: gap }
        return {
          item,
          about,
          found: gap,
          side: 'at least',
          limit: airBetween(one, other),
          says: moves
            ? 'Between {one} and {other} there is {found} of air; beside a motor, which moves under torque, leave {limit} and more.'
            : 'Between {one} and {other} there is {found} of air; leave {limit}.',
          slots,
          remedies: [MOVE],
        }
      }),
      ...unplaced(m, ask, 'Whether it touches anything cannot be told yet.'),
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.bodies.motor.length', now: '420 mm' }], item: 'front-box and motor' },
})

type Guard = { readonly limit: Fact; readonly why: string }
const GUARDS_PEOPLE: Readonly<Partial<Record<Beside['kind'], Guard>>> = {
  'jacking point': { limit: CLEARANCE_HABITS.toBody, why: 'a jack or lift pad under it would bear on the part' },
  'brake or fuel line': { limit: CLEARANCE_HABITS.toSharpEdge, why: 'a line that is rubbed through fails when it is needed' },
  'crush zone': { limit: CLEARANCE_HABITS.toBody, why: 'what stands there is crushed in an impact' },
  'belt anchor or seat rail': { limit: CLEARANCE_HABITS.toBody, why: 'seat and belt must hold and be reached' },
  shaft: { limit: CLEARANCE_HABITS.toShaft, why: 'a turning shaft cuts what it reaches' },
}
const GUARDS_PARTS: Readonly<Partial<Record<Beside['kind'], Guard>>> = {
  drain: { limit: CLEARANCE_HABITS.toBody, why: 'water must run out' },
  'hot part': { limit: CLEARANCE_HABITS.toHotPart, why: 'heat ages cells, cables and seals' },
  'moving part': { limit: CLEARANCE_HABITS.toJoint, why: 'what moves wears through what it touches' },
}

/** Air wanted to what is kept free, by its kind. */
export const airToKept = (kind: Beside['kind']): Fact => (GUARDS_PEOPLE[kind] ?? (GUARDS_PARTS[kind] as Guard)).limit

/** Keeps shapes clear of what is kept free, of those kinds alone. */
const clearOf =
  (guards: typeof GUARDS_PEOPLE): Rule['judgements'] =>
  (m, ask) => {
    const wanted = keptFreeOf(m).filter(([, k]) => guards[k.kind])
    if (wanted.length === 0) return doesNotApply('nothing of this kind is kept free', ['fit.keep-outs'])
    if (!anyShape(m)) return NO_SHAPE()
    const found = ask(gaps)
    return wanted.flatMap(([item, k]): readonly Judgement[] => {
      const at = `fit.keep-outs.${item}`,
        missing = gapsIn(readsOf(k), new WeakSet(), [])
      if (missing.length) return [{ item, about: [at], says: 'Where it lies is not known yet.', missing: { gaps: missing } }]
      if (isGaps(found)) return [{ item, about: [at], says: 'What comes near to it cannot be told yet.', missing: found }]
      const beside = (found.beside as readonly Beside[]).find(b => b.name === item)
      const { limit, why } = guards[k.kind as BlockKind] as Guard
      if (!beside) return []
      return [
        {
          item,
          about: [at, ...placeOf(m, beside.shape.name)],
          found: beside.gap,
          side: 'at least',
          limit,
          says: 'From {item} to {shape} there is {found} of air; leave {limit}: {why}.',
          slots: { shape: nameOfShape(beside.shape.name), why: reason(k.kind, why) },
          remedies: [{ do: 'act', says: 'Move the part, or show that what is kept free lies elsewhere.' }],
        },
      ]
    })
  }
const reason = (kind: string, why: string): Fact<string> => ({
  path: `standard.kept-free.${kind.replaceAll(' ', '-')}`,
  label: 'why',
  symbol: '',
  unit: '',
  value: why,
})

export const clearOfGuards = rule({
  id: 'clear-of-what-guards-people',
  title: 'Nothing covers jacking points, lines, crush zones, belts, seats or turning shafts',
  stage: 'fit',
  harm: 'S3',
  hazards: ['A14'],
  source: FITTING,
  caution:
    'A car that slips off its jack, a brake line rubbed through, a cell crushed: each can kill. Whoever signs looks at these places first.',
  judgements: clearOf(GUARDS_PEOPLE),
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.keep-outs.brake-line.top', now: '420 mm' }], item: 'brake-line' },
})

export const clearOfHeat = rule({
  id: 'clear-of-heat-water-and-motion',
  title: 'Parts stand clear of heat, drains and what moves',
  stage: 'fit',
  harm: 'S2',
  hazards: [],
  source: FITTING,
  judgements: clearOf(GUARDS_PARTS),
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.keep-outs.heater-drain.front', now: '20 mm' }], item: 'heater-drain' },
})

export const clearOfWheels = rule({
  id: 'clear-of-wheels',
  title: 'Wheels stay clear over full lock and travel',
  stage: 'fit',
  harm: 'S3',
  hazards: ['C9'],
  source: FITTING,
  caution: 'A tyre that touches cuts cables and can jam the steering. Try it with springs out, lock to lock, before the first drive.',
  judgements: (m, ask) => {
    if (!anyShape(m)) return NO_SHAPE()
    const found = ask(wheelHouses)
    if (isGaps(found)) return [{ about: ['fit.wheels'], says: 'Whether the wheels stay clear cannot be told yet.', missing: found }]
    return (['front', 'rear'] as const).flatMap((axle): readonly Judgement[] => {
      const at = found.axles[axle]
      if (isGaps(at))
        return [{ item: axle, about: ['fit.wheels'], says: 'Lock and travel of these wheels are not known yet.', missing: at }]
      return (at as readonly AtWheel[]).map(
        ({ wheel, shape, gap }): Judgement => ({
          item: wheel,
          about: ['fit.wheels', ...placeOf(m, shape.name)],
          found: gap,
          side: 'at least',
          limit: CLEARANCE_HABITS.toTyre,
          says: 'Over full lock and travel the {item} wheel leaves {found} to {shape}; leave {limit}, and more for snow chains.',
          slots: { shape: nameOfShape(shape.name) },
          remedies: [{ do: 'act', says: 'Move the part inboard or up, or make it smaller.' }],
        }),
      )
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.bodies.front-box.width', now: '1100 mm' }], item: 'front left' },
})

const SMALLER = [{ do: 'act', says: 'Move it, turn it, make it smaller, or measure the space again where it is narrowest.' }] as const
export const insideItsSpace = rule({
  id: 'inside-its-space',
  title: 'Each part fits the space it stands in',
  stage: 'fit',
  harm: 'S2',
  hazards: [],
  source: FITTING,
  judgements: (m, ask) => {
    const told = Object.entries(m.fit.bodies).filter(([, b]) => b && 'value' in b.space)
    if (told.length === 0) return doesNotApply('no part says which space it stands in', ['fit.bodies', 'fit.spaces'])
    const found = ask(gaps)
    if (isGaps(found)) return [{ about: ['fit.bodies'], says: 'Whether the parts fit their spaces cannot be told yet.', missing: found }]
    return told.flatMap(([item, b]): readonly Judgement[] => {
      const inside = found.inside.find(i => i.shape.name === item),
        space = b && 'value' in b.space ? b.space : undefined
      if (!space) return []
      const about = [...placeOf(m, item), `fit.spaces.${space.value}`]
      if (!inside) {
        const room = m.fit.spaces[space.value],
          missing = room ? gapsIn([room.front, room.rear, room.left, room.right, room.bottom, room.top], new WeakSet(), []) : []
        return missing.length ? [{ item, about, says: 'The space is not measured yet.', missing: { gaps: missing } }] : []
      }
      return [
        {
          item,
          about,
          found: inside.air,
          side: 'at least',
          limit: CLEARANCE_HABITS.toBody,
          says: 'In {space} it has {found} of air at its narrowest; leave {limit}.',
          slots: { space },
          remedies: SMALLER,
        },
        ...(inside.walls
          ? [
              {
                item: `${item}, walls`,
                about,
                found: inside.walls,
                side: 'at least' as const,
                limit: CLEARANCE_HABITS.toBody,
                says: 'Seen from above it has {found} of air to the walls of {space}; leave {limit}.',
                slots: { space },
                remedies: SMALLER,
              },
            ]
          : []),
      ]
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.bodies.tank-box.width', now: '1100 mm' }], item: 'tank-box' },
})
