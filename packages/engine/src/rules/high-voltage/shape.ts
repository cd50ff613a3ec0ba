import type { Model } from '../../model/model.ts'
import type { Source } from '../../sources.ts'
import { type CircuitAnswer, circuit, noCircuit, partsOf, untoldOf, usersOf, wiresOf } from '../../studies/high-voltage/circuit.ts'
import { type Ask, type Gaps, isGaps } from '../../studies/study.ts'
import { type AnyValue, type Fact, type Gap, isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'

export const WIRING: Source = { work: 'practice', place: 'high-voltage circuits of converted cars', mark: 'common practice' }
export const LIVE =
  'A pack cannot be switched off: its terminals stay live. Have the circuit checked by whoever is qualified for high voltage before anything is joined.'
export const NO_CIRCUIT = (): readonly Judgement[] => doesNotApply('the circuit is not described yet', ['high-voltage.parts'])
const NOTHING: Gap = {
  gap: true,
  path: 'high-voltage.parts',
  label: 'the parts of the high-voltage circuit, and its wires',
  until: 'any time',
}
export const partPath = (name: string): string => `high-voltage.parts.${name}`
export const wirePath = (name: string): string => `high-voltage.wires.${name}`
export const word = (path: string, label: string, value: string): Fact<string> => ({ path, label, symbol: '', unit: '', value })
const CIRCUIT = ['high-voltage.parts', 'high-voltage.wires']

/** What the shape of the circuit says, once every wire of it is told. */
function ofShape(m: Model, ask: Ask, judge: (c: CircuitAnswer, rests: readonly AnyValue[]) => readonly Judgement[]): readonly Judgement[] {
  if (noCircuit(m)) return NO_CIRCUIT()
  const answer = ask(circuit) as CircuitAnswer | Gaps,
    missing = isGaps(answer) ? answer : untoldOf(answer)
  if (missing) return [{ about: CIRCUIT, says: 'How the circuit hangs together is not told of every wire yet.', missing }]
  return judge(answer as CircuitAnswer, wiring(m))
}
/** The words a statement about the shape rests on: every end of every wire. */
const wiring = (m: Model): readonly AnyValue[] => [
  ...wiresOf(m).flatMap(([, w]) => [w.from, w.fromEnd, w.to, w.toEnd].filter((f): f is Exclude<typeof f, Gap> => !isGap(f)) as AnyValue[]),
  ...partsOf(m).flatMap(([, p]): AnyValue[] => (p.kind === 'contactor' && !isGap(p.role) ? [p.role as AnyValue] : [])),
]

export const circuitWired = rule({
  id: 'circuit-wired',
  title: 'Every end of every part of the circuit is joined to something',
  stage: 'high voltage',
  harm: 'S2',
  hazards: [],
  source: WIRING,
  judgements: (m, ask) => {
    if (noCircuit(m)) return [{ about: ['high-voltage.parts'], says: 'The circuit is not described yet.', missing: NOTHING }]
    return ofShape(m, ask, ({ loose, astray }, rests) => {
      const fields = partsOf(m).flatMap(([, p]) => (p.kind === 'battery box' ? [p.box] : [])),
        boxes = fields.flatMap(b => (isGap(b) ? [] : [b.value])),
        nameless = fields.filter(isGap)
      const faults: Judgement[] = [
        ...loose.map(
          ({ part, end }): Judgement => ({
            item: `${part} ${end}`,
            about: [partPath(part)],
            holds: false,
            rests,
            says: 'No wire is joined to {part} at its end {end}.',
            slots: { part: word(partPath(part), 'part', part), end: word(partPath(part), 'end', end) },
            remedies: [{ do: 'act', says: 'Add the wire, or take the part out of the circuit.' }],
          }),
        ),
        ...astray.map(
          ({ wire, at: { part, end } }): Judgement => ({
            item: wire,
            about: [wirePath(wire)],
            holds: false,
            rests,
            says: 'It is to be joined to {part} at an end {end}, which that part does not have.',
            slots: { part: word(wirePath(wire), 'part', part), end: word(wirePath(wire), 'end', end) },
            remedies: [
              {
                do: 'act',
                says: 'Name an end the part has: plus and minus of what has poles, in and out of what is passed through, bar of a bar.',
              },
            ],
          }),
        ),
        ...nameless
          .map((missing): Judgement => ({ about: [missing.path], says: 'Which box of the pack this is is not said yet.', missing }))
          .slice(0, 1),
        ...Object.keys(nameless.length > 0 ? {} : m.pack.boxes)
          .filter(box => !boxes.includes(box))
          .sort()
          .map(
            (box): Judgement => ({
              item: `box ${box}`,
              about: [`pack.boxes.${box}`, 'high-voltage.parts'],
              holds: false,
              rests,
              says: 'This box of the pack is not in the circuit.',
              remedies: [{ do: 'act', says: 'Add it to the circuit, with its fuse and its wires.' }],
            }),
          ),
      ]
      return faults.length > 0
        ? faults
        : [{ about: CIRCUIT, holds: true, rests, says: 'Every end is joined, and every box of the pack is there.' }]
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'high-voltage.wires.w03', now: null }], item: 'main-minus out' },
})

export const bothPolesSwitched = rule({
  id: 'both-poles-switched',
  title: 'Contactors part both poles of everything from the batteries',
  stage: 'high voltage',
  harm: 'S3',
  hazards: ['C3'],
  source: WIRING,
  caution: LIVE,
  judgements: (m, ask) =>
    ofShape(m, ask, (c, rests) => {
      const users = usersOf(c)
      if (users.length === 0) return doesNotApply('nothing that takes power is in the circuit', CIRCUIT)
      return users.flatMap((item): Judgement[] => {
        const live = c.unswitched.filter(u => u.user === item),
          about = [partPath(item), 'high-voltage.wires']
        return live.length === 0
          ? [{ item, about, holds: true, rests, says: 'With every contactor open both its poles are parted from the batteries.' }]
          : live.slice(0, 1).map(
              ({ end, box }): Judgement => ({
                item,
                about,
                holds: false,
                rests,
                says: 'With every contactor open its pole {end} still hangs on {box}.',
                slots: { end: word(partPath(item), 'pole', end), box: word(partPath(box), 'box', box) },
                remedies: [{ do: 'act', says: 'A main contactor in that pole too, before everything that takes power.' }],
              }),
            )
      })
    }),
  spoil: { sample: 'lapwing', edits: [{ path: 'high-voltage.wires.w03.from', now: 'sensor' }], item: 'inverter' },
})

export const boxHasOwnFuse = rule({
  id: 'box-has-own-fuse',
  title: 'Every battery box has a fuse of its own at its exit',
  stage: 'high voltage',
  harm: 'S3',
  hazards: ['C8'],
  source: WIRING,
  caution: LIVE,
  judgements: (m, ask) =>
    ofShape(m, ask, (c, rests) => {
      const boxes = c.circuit.parts.filter(p => p.kind === 'battery box').map(p => p.name)
      if (boxes.length === 0) return doesNotApply('no battery box is in the circuit', CIRCUIT)
      return boxes.map(
        (item): Judgement => ({
          item,
          about: [partPath(item), 'high-voltage.wires'],
          holds: !c.fuseless.includes(item),
          rests,
          says: c.fuseless.includes(item)
            ? 'Neither pole leads straight into a fuse: a short of the cable between boxes has nothing to melt.'
            : 'One of its poles leads straight into a fuse.',
          remedies: [{ do: 'act', says: 'A fuse inside the box, at one of its poles, for the whole voltage of the pack.' }],
        }),
      )
    }),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'high-voltage.wires.w05.from', now: 'tank' },
      { path: 'high-voltage.wires.w05.from-end', now: 'plus' },
    ],
    item: 'tank',
  },
})

export const disconnectBreaksString = rule({
  id: 'disconnect-breaks-string',
  title: 'Taking out the service disconnect leaves no way for a current through the batteries',
  stage: 'high voltage',
  harm: 'S3',
  hazards: [],
  source: WIRING,
  caution: `${LIVE} With it out each box still holds its own voltage.`,
  judgements: (m, ask) =>
    ofShape(m, ask, ({ breaks, circuit: { parts } }, rests) => {
      if (!parts.some(p => p.kind === 'service disconnect'))
        return [
          {
            about: CIRCUIT,
            holds: false,
            rests,
            says: 'No service disconnect is in the circuit.',
            remedies: [{ do: 'act', says: 'A service disconnect in the middle of the string, reached without going under the car.' }],
          },
        ]
      return [
        {
          about: CIRCUIT,
          holds: breaks,
          rests,
          says: breaks
            ? 'With it out no way is left through the batteries.'
            : 'With it out a current still finds a way through the batteries.',
          remedies: [{ do: 'act', says: 'Put it into the string itself, between two boxes.' }],
        },
      ]
    }),
  spoil: { sample: 'lapwing', edits: [{ path: 'high-voltage.wires.w06.from', now: 'fuse-boot' }] },
})
