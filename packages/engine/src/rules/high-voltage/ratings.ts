import { noCircuit, partsOf, wiresOf } from '../../studies/high-voltage/circuit.ts'
import { type Protection, protection } from '../../studies/high-voltage/protection.ts'
import { type WireFigures, wires } from '../../studies/high-voltage/wires.ts'
import { type Gaps, isGaps } from '../../studies/study.ts'
import { isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import { LIVE, NO_CIRCUIT, partPath, wirePath, word } from './shape.ts'

const ARC = 'A direct-current arc does not go out by itself. Only what is rated for the full voltage as direct voltage breaks it.'

export const circuitVoltage = rule({
  id: 'circuit-voltage',
  title: 'Everything in the circuit is rated for the full voltage of the pack',
  stage: 'high voltage',
  harm: 'S3',
  hazards: ['C6'],
  source: { work: 'practice', place: 'rated direct voltage against the highest voltage that can occur', mark: 'common practice' },
  caution: ARC,
  judgements: (m, ask) => {
    if (noCircuit(m)) return NO_CIRCUIT()
    const { full } = ask(protection) as Protection
    const parts = partsOf(m).flatMap(([item, p]): Judgement[] =>
      p.kind === 'fuse' || p.kind === 'contactor' || p.kind === 'service disconnect'
        ? [
            {
              item,
              about: [`${partPath(item)}.voltage`],
              found: p.voltage,
              side: 'at least',
              limit: full,
              says: 'It breaks {found} of direct voltage; the full pack has {limit}.',
              remedies: [{ do: 'act', says: 'A part rated for that as direct voltage: a rating for alternating voltage says nothing.' }],
            },
          ]
        : [],
    )
    const runs = wiresOf(m).map(
      ([name, w]): Judgement => ({
        item: `wire ${name}`,
        about: [`${wirePath(name)}.voltage`],
        found: w.voltage,
        side: 'at least',
        limit: full,
        says: 'Its insulation is rated for {found}; the full pack has {limit}.',
        remedies: [{ do: 'act', says: 'Cable made for that voltage in cars; welding cable is not.' }],
      }),
    )
    return [...parts, ...runs]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'high-voltage.parts.fuse-front.voltage', now: '125 V' }], item: 'fuse-front' },
})

export const fuseBreaksShort = rule({
  id: 'fuse-breaks-short',
  title: 'Every fuse breaks the highest current a short can draw',
  stage: 'high voltage',
  harm: 'S3',
  hazards: [],
  source: { work: 'practice', place: 'interrupt rating against the full, warm, new pack with nothing in the way', mark: 'common practice' },
  caution: 'A fuse that cannot break its fault bursts.',
  judgements: (m, ask) => {
    if (noCircuit(m)) return NO_CIRCUIT()
    const { highest } = ask(protection) as Protection,
      fuses = partsOf(m).flatMap(([item, p]) => (p.kind === 'fuse' ? [{ item, breaks: p.breaks }] : []))
    if (fuses.length === 0) return doesNotApply('no fuse is in the circuit', ['high-voltage.parts'])
    const known = fuses.flatMap(f => (isGap(f.breaks) ? [] : [{ ...f, breaks: f.breaks }])),
      weakest = known.reduce<(typeof known)[number] | undefined>((a, f) => (a && a.breaks.value <= f.breaks.value ? a : f), undefined)
    return [
      ...fuses.flatMap(({ item, breaks }): readonly Judgement[] =>
        isGap(breaks)
          ? [{ item, about: [`${partPath(item)}.breaks`], says: 'What it breaks at most is not known yet.', missing: breaks }]
          : [],
      ),
      ...(weakest
        ? [
            {
              about: [`${partPath(weakest.item)}.breaks`],
              found: weakest.breaks,
              side: 'at least',
              limit: highest,
              says: 'The weakest, {fuse}, breaks {found} at most; a short behind it can draw {limit}.',
              slots: { fuse: word(partPath(weakest.item), 'fuse', weakest.item) },
              remedies: [{ do: 'act', says: 'A fuse with a higher interrupt rating at that direct voltage.' }],
            } satisfies Judgement,
          ]
        : []),
    ]
  },
  spoil: { sample: 'badger', edits: [{ path: 'high-voltage.parts.fuse-left.breaks', now: '10 kA' }] },
})

export const passedThroughCarries = rule({
  id: 'circuit-carries',
  title: 'Fuses, contactors and disconnects carry for hours what goes through them',
  stage: 'high voltage',
  harm: 'S2',
  hazards: [],
  source: { work: 'practice', place: 'ratings at 25 °C against the current for hours; fuses derated', mark: 'common practice' },
  judgements: (m, ask) => {
    if (noCircuit(m)) return NO_CIRCUIT()
    const { through } = ask(protection) as Protection
    return Object.entries(through).flatMap(([item, { current, carries }]): readonly Judgement[] =>
      current === null
        ? []
        : [
            {
              item,
              about: [partPath(item)],
              found: current,
              side: 'at most',
              limit: carries,
              says: 'Through it {found} flow for hours; it carries {limit}.',
              remedies: [{ do: 'act', says: 'A larger part, or less drawn through it.' }],
            },
          ],
    )
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'high-voltage.parts.main-plus.current', now: '60 A' }], item: 'main-plus' },
})

export const wireCarries = rule({
  id: 'wire-carries',
  title: 'Every wire carries for hours what flows in it',
  stage: 'high voltage',
  harm: 'S2',
  hazards: [],
  source: { work: 'churchill-chu-1975', place: 'one cable in still air; hottest air along the run' },
  caution:
    'Insulation that runs too hot goes brittle and shorts, unseen. In conduit, bundles and beside hot parts a wire carries less than in free air.',
  judgements: (m, ask) => {
    if (noCircuit(m)) return NO_CIRCUIT()
    const answer = ask(wires) as Readonly<Record<string, WireFigures>> | Gaps
    if (isGaps(answer)) return [{ about: ['high-voltage.wires'], says: 'What the wires carry cannot be told yet.', missing: answer }]
    return Object.entries(answer).flatMap(([item, { current, carries }]): readonly Judgement[] =>
      // What flows for moments only, as in the precharge, is no question of hours.
      current === null
        ? []
        : [
            {
              item,
              about: [wirePath(item)],
              found: current,
              side: 'at most',
              limit: carries,
              says: 'It has {found} for hours and carries {limit} in still air.',
              remedies: [{ do: 'act', says: 'The next larger conductor, an insulation for more heat, or a cooler run.' }],
            },
          ],
    )
  },
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'high-voltage.wires.w09.section', now: '6 mm2' },
      { path: 'high-voltage.wires.w09.diameter', now: '6 mm' },
    ],
    item: 'w09',
  },
})

export const fuseGuardsWire = rule({
  id: 'fuse-guards-wire',
  title: 'A fuse melts before a wire is overloaded for hours',
  stage: 'high voltage',
  harm: 'S3',
  hazards: ['C7'],
  source: { work: 'practice', place: 'rating of the fuse against what each conductor it guards carries', mark: 'common practice' },
  caution: LIVE,
  judgements: (m, ask) => {
    if (noCircuit(m)) return NO_CIRCUIT()
    const { unguarded, rests } = ask(protection) as Protection,
      about = ['high-voltage.wires', 'high-voltage.parts']
    if (isGaps(unguarded)) return [{ about, says: 'Whether a fuse stands before every wire cannot be told yet.', missing: unguarded }]
    if (unguarded.length === 0)
      return [
        {
          about,
          holds: true,
          rests,
          says: 'In no wire can more flow round for hours than it carries in still air: a fuse that is rated for no more stands in the way. Whether a short is broken before a thin wire suffers, its curve must show.',
        },
      ]
    return unguarded.map(
      (item): Judgement => ({
        item,
        about: [wirePath(item)],
        holds: false,
        rests,
        says: 'More can flow in {wire} for hours than it carries before any fuse melts.',
        slots: { wire: word(wirePath(item), 'wire', item) },
        remedies: [
          { do: 'act', says: 'A smaller fuse before it, a larger conductor, or an overload trip that does not hang on one control unit.' },
        ],
      }),
    )
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'high-voltage.parts.fuse-charger.rating', now: '160 A' }], item: 'w18' },
})
