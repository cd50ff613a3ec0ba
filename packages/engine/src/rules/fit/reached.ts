import type { Body, Ip, SpaceKind } from '../../model/fit.ts'
import { type Before, gaps } from '../../studies/fit/gaps.ts'
import { shapesOf } from '../../studies/fit/places.ts'
import { isGaps } from '../../studies/study.ts'
import { type Fact, isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import { anyShape, FITTING, nameOfShape, NO_SHAPE, pathOf, placeOf } from './shapes.ts'

export const facesReached = rule({
  id: 'faces-reached',
  title: 'Terminals, connectors and fans are reached where they are',
  stage: 'fit',
  harm: 'S1',
  hazards: [],
  source: FITTING,
  judgements: (m, ask) => {
    if (!anyShape(m)) return NO_SHAPE()
    const found = ask(gaps)
    if (isGaps(found)) return [{ about: ['fit.bodies'], says: 'What stands before the faces cannot be told yet.', missing: found }]
    if (found.before.length === 0) return doesNotApply('no face asks for free depth', ['fit.bodies'])
    return (found.before as readonly Before[]).map(
      ({ shape, face, wanted, other, free }): Judgement => ({
        item: `${shape.name} ${face}`,
        about: [`${pathOf(shape.name)}.room.${face}`, ...placeOf(m, shape.name), ...placeOf(m, other.name)],
        found: free,
        side: 'at least',
        limit: wanted,
        says: 'Before this face {found} is free up to {other}; {limit} is wanted.',
        slots: { other: nameOfShape(other.name) },
        remedies: [{ do: 'act', says: 'Turn the part so that the face looks into the open, or move what stands before it.' }],
      }),
    )
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.bodies.inverter.room.bottom', now: '150 mm' }], item: 'inverter bottom' },
})

const LIVE: readonly Body['kind'][] = ['motor', 'inverter', 'battery box', 'part put in', 'on-board charger', 'AC inlet']

/** Second digit an IP code needs where water stands, is thrown up by wheels, or only drips. Common practice. */
const WATER_WANTED: Readonly<Record<SpaceKind, number>> = {
  'under floor': 7,
  'tank space': 7,
  tunnel: 7,
  'engine bay': 5,
  boot: 0,
  cabin: 0,
  custom: 0,
}
const waterOf = (ip: Ip): number => (ip === 'IP69K' ? 9 : Number(ip[3]))

export const protectedFromWater = rule({
  id: 'protected-from-water',
  title: 'Parts are as tight against water as their place asks',
  stage: 'fit',
  harm: 'S2',
  hazards: [],
  source: { work: 'practice', place: 'second digit of the IP code by place in the car', mark: 'common practice' },
  judgements: m => {
    const told = shapesOf(m).flatMap(([item, b]) => {
      const space = isGap(b.space) ? undefined : m.fit.spaces[b.space.value]
      return LIVE.includes(b.kind) && space ? [{ item, b, space }] : []
    })
    if (told.length === 0) return doesNotApply('no part says which space it stands in', ['fit.bodies'])
    return told.map(({ item, b, space }): Judgement => {
      const about = [`${pathOf(item)}.protection`, space.at]
      if (isGap(space.kind)) return { item, about, says: 'What kind of space it stands in is not said.', missing: space.kind }
      const wanted = WATER_WANTED[space.kind.value]
      if (wanted === 0) return { item, about, doesNotApply: 'the space is dry', says: 'the space is dry' }
      if (isGap(b.protection)) return { item, about, says: 'How tight it is against water is not known.', missing: b.protection }
      return {
        item,
        about,
        holds: waterOf(b.protection.value) >= wanted,
        rests: [b.protection, space.kind],
        says: 'It is {ip}, and stands in a space of the kind «{kind}»: there, the trade asks for {wanted} or better.',
        slots: { ip: b.protection, kind: space.kind, wanted: codeFor(wanted) },
        remedies: [{ do: 'act', says: 'A tighter part, a tight box round it, or a dry place.' }],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.bodies.tank-box.protection', now: 'IP54' }], item: 'tank-box' },
})
const codeFor = (digit: number): Fact<string> => ({
  path: `standard.protection.${digit}`,
  label: 'IP code',
  symbol: '',
  unit: '',
  value: `IP6${digit}`,
  origin: {
    how: 'standard',
    source: { work: 'practice', place: 'second digit of the IP code by place in the car', mark: 'common practice' },
  },
})

export const partsOutsideCabin = rule({
  id: 'high-voltage-outside-cabin',
  title: 'What carries high voltage stands outside the space of the occupants',
  stage: 'fit',
  harm: 'S3',
  hazards: ['A15'],
  source: FITTING,
  caution:
    'High voltage within reach of occupants needs covers that only a tool opens (UN R100: IPXXD in the cabin and the boot). Whoever signs decides.',
  judgements: m => {
    const told = shapesOf(m).flatMap(([item, b]) => {
      const space = isGap(b.space) ? undefined : m.fit.spaces[b.space.value]
      return LIVE.includes(b.kind) && space ? [{ item, b, space }] : []
    })
    if (told.length === 0) return doesNotApply('no part says which space it stands in', ['fit.bodies'])
    return told.map(({ item, b, space }): Judgement => {
      const about = [`${pathOf(item)}.space`, `${space.at}.kind`, `${space.at}.open-to-cabin`]
      if (isGap(space.kind)) return { item, about, says: 'What kind of space it stands in is not said.', missing: space.kind }
      // Gas is what the open air between boot and cabin is asked for: it comes from cells.
      const asks = b.kind === 'battery box' && space.kind.value !== 'cabin'
      if (asks && isGap(space.openToCabin))
        return { item, about, says: 'Whether air of its space reaches the cabin is not known.', missing: space.openToCabin }
      const open = asks && !isGap(space.openToCabin) && space.openToCabin.value === 'yes'
      const shut =
        b.kind === 'battery box' && !isGap(b.lidSeal) && b.lidSeal.value === 'yes' && !isGap(b.vent) && b.vent.value === 'to the outside'
      return {
        item,
        about,
        holds: space.kind.value !== 'cabin' && (!open || shut),
        rests: [
          space.kind,
          ...(asks && !isGap(space.openToCabin) ? [space.openToCabin] : []),
          ...(open && b.kind === 'battery box' ? [b.lidSeal, b.vent].flatMap(f => (isGap(f) ? [] : [f])) : []),
        ],
        says: open
          ? 'It stands in a space of the kind «{kind}» whose air reaches the cabin; only a box with a sealed lid that vents to the outside may.'
          : 'It stands in a space of the kind «{kind}».',
        slots: { kind: space.kind },
        remedies: [{ do: 'act', says: 'Put it outside the cabin, or seal its box and lead its gas outside.' }],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.spaces.boot.kind', now: 'cabin' }], item: 'boot-box' },
})

export const askedBeforeCutting = rule({
  id: 'asked-before-cutting',
  title: 'Cuts and welds are asked for before the work',
  stage: 'fit',
  harm: 'S2',
  hazards: ['N1'],
  source: { work: 'practice', place: 'whoever signs is asked before the body is cut', mark: 'common practice' },
  judgements: m => {
    const cut = shapesOf(m).filter(([, b]) => !isGap(b.fixing) && (b.fixing.value === 'cut out' || b.fixing.value === 'welded on'))
    if (cut.length === 0) return doesNotApply('nothing is cut or welded for a part', ['fit.bodies'])
    const { inspector } = m.brief.asked
    return cut.map(([item, b]): Judgement => {
      const about = [`${pathOf(item)}.fixing`, 'brief.asked.inspector']
      return {
        item,
        about,
        holds: !isGap(inspector),
        rests: [...(isGap(b.fixing) ? [] : [b.fixing]), ...(isGap(inspector) ? [] : [inspector])],
        says: isGap(inspector)
          ? 'It is {fixing}: the body is changed for it, and the inspector is not asked yet.'
          : 'It is {fixing}: the body is changed for it. The inspector was asked on {day}.',
        slots: {
          ...(isGap(b.fixing) ? {} : { fixing: b.fixing }),
          ...(isGap(inspector) ? {} : { day: inspector }),
        },
        remedies: [{ do: 'act', says: 'Ask the inspector first, with a drawing, or use points the car has.' }],
      }
    })
  },
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'fit.bodies.tank-box.fixing', now: 'welded on' },
      { path: 'brief.asked.inspector', now: null },
    ],
    item: 'tank-box',
  },
})
