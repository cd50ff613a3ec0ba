import type { Model } from '../../model/model.ts'
import { type BusAnswer, bus } from '../../studies/high-voltage/bus.ts'
import { noCircuit } from '../../studies/high-voltage/circuit.ts'
import { type Ask, type Gaps, isGaps } from '../../studies/study.ts'
import type { Field } from '../../working/value.ts'
import { type Judgement, rule } from '../rule.ts'
import { NO_CIRCUIT, partPath, WIRING } from './shape.ts'

const ABOUT = ['high-voltage.parts', 'high-voltage.wires']
function ofBus(m: Model, ask: Ask, judge: (b: BusAnswer) => readonly Judgement[]): readonly Judgement[] {
  if (noCircuit(m)) return NO_CIRCUIT()
  const answer = ask(bus) as BusAnswer | Gaps
  if (isGaps(answer)) return [{ about: ABOUT, says: 'What the bus stores cannot be told yet.', missing: answer }]
  return judge(answer)
}

export const prechargeThere = rule({
  id: 'precharge-there',
  title: 'The bus is filled through a resistor before a main contactor closes',
  stage: 'high voltage',
  harm: 'S2',
  hazards: ['C1'],
  source: WIRING,
  caution: 'Closing onto an empty bus welds the contactor, and the voltage swings far above that of the pack.',
  judgements: (m, ask) =>
    ofBus(m, ask, ({ precharge, capacitance, resistor }) => {
      if (precharge === null)
        return [
          {
            about: ABOUT,
            holds: false,
            rests: [capacitance],
            says: 'No way through a resistor and a contactor of its own lies beside a main contactor; the bus has {capacitance}.',
            slots: { capacitance },
            remedies: [{ do: 'act', says: 'A precharge contactor and a resistor from one side of a main contactor to the other.' }],
          },
        ]
      const about = [partPath(resistor ?? ''), ...ABOUT]
      if (isGaps(precharge)) return [{ about, says: 'How fast the bus fills cannot be told yet.', missing: precharge }]
      const remedies = [
        { do: 'act', says: 'A smaller resistor, or larger bleeders: so it never comes near the voltage of the pack.' },
      ] as const
      if ('stalls' in precharge)
        return [
          {
            about,
            holds: false,
            rests: [precharge.stalls],
            says: 'It stalls at {voltage}: the bleeders draw what the resistor lets through.',
            slots: { voltage: precharge.stalls },
            remedies,
          },
        ]
      return [
        {
          about,
          holds: true,
          rests: [precharge.time],
          says: 'It comes to {threshold} after {time}; a control that gives up after {timeout} tells a fault from a slow day.',
          slots: { threshold: precharge.threshold, time: precharge.time, timeout: precharge.timeout },
          remedies,
        },
      ]
    }),
  spoil: { sample: 'lapwing', edits: [{ path: 'high-voltage.wires.w14.to', now: 'minus-bar' }] },
})

export const prechargeResistorLasts = rule({
  id: 'precharge-resistor-lasts',
  title: 'The precharge resistor takes all tries that are allowed in a row',
  stage: 'high voltage',
  harm: 'S2',
  hazards: ['C2'],
  source: WIRING,
  judgements: (m, ask) =>
    ofBus(m, ask, ({ precharge, resistor }): readonly Judgement[] => {
      const part = resistor === null ? undefined : m.highVoltage.parts[resistor]
      if (precharge === null || resistor === null || part?.kind !== 'precharge resistor')
        return [{ about: ABOUT, says: 'no precharge is in the circuit', doesNotApply: 'no precharge is in the circuit' }]
      const about = [`${partPath(resistor)}.energy`]
      if (isGaps(precharge)) return [{ about, says: 'What it takes up cannot be told yet.', missing: precharge }]
      if ('stalls' in precharge)
        return [{ about, says: 'the precharge stalls', doesNotApply: 'the precharge stalls, which is judged by itself' }]
      return [
        {
          about,
          found: part.energy as Field,
          side: 'at least',
          limit: precharge.tries,
          says: 'It takes {found} in one pulse; all tries in a row leave {limit} in it.',
          remedies: [{ do: 'act', says: 'A resistor for a larger pulse, or a lock-out after the first failed try.' }],
        },
      ]
    }),
  spoil: { sample: 'lapwing', edits: [{ path: 'high-voltage.parts.precharge-resistor.energy', now: '60 J' }] },
})

export const busEmpties = rule({
  id: 'bus-empties',
  title: 'The bus empties by itself once it is switched off',
  stage: 'high voltage',
  harm: 'S3',
  hazards: ['C15'],
  source: { work: 'practice', place: 'bleeders always connected, wait on a label, absence of voltage measured', mark: 'common practice' },
  caution:
    'A failed bleeder leaves the bus charged for days, and a turning motor charges it anew. Measure the absence of voltage on both poles before anything is touched.',
  judgements: (m, ask) =>
    ofBus(m, ask, ({ down, low, capacitance, energy }) => [
      {
        about: ABOUT,
        holds: down !== 'never',
        rests: down === 'never' ? [capacitance] : [down],
        says:
          down === 'never'
            ? 'No resistor is known that empties it: {energy} stay in it for as long as nobody drains them.'
            : 'It holds {energy} and is down to {low} after {down}.',
        slots: { energy, ...(down === 'never' ? {} : { down, low }) },
        remedies: [{ do: 'act', says: 'Measure the bleeder of each part, or fit one across the bus.' }],
      },
    ]),
  spoil: {
    sample: 'lapwing',
    edits: ['inverter', 'charger', 'dc-dc', 'heater'].map(part => ({ path: `high-voltage.parts.${part}.bleeder`, now: null })),
  },
})
