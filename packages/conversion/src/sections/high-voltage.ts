import { jacketDiameter } from '../assumptions.ts'
import { choice, group, mapOf, quantity, reference, variants } from '../schema/field.ts'
import { PART } from './tools.ts'

// Tools, accuracies and times in this file are common practice.
const BEFORE = 'before the part is bought' as const
const RUN = { tool: 'cord laid along the run, then a tape; ends and bends with it', accuracy: '± 5 %', minutes: 15 }
const PRINT = { tool: 'print on the jacket, or its datasheet', accuracy: 'as stated', minutes: 5 }
const AROUND = { tool: 'thermometer beside the run after an hour of hard driving', accuracy: '± 3 K', minutes: 90 }
const BRIDGE = { tool: 'LCR meter at the terminals, part off the bus, discharged and proven dead', accuracy: '± 5 %', minutes: 10 }
const OHMS = { tool: 'ohmmeter at the terminals, part off the bus, discharged and proven dead', accuracy: '± 1 %', minutes: 10 }

const PART_LABEL = 'part of the circuit'
const ENDS = ['plus', 'minus', 'in', 'out', 'bar'] as const
const rated = (label: string, symbol: string) =>
  quantity('current', label, symbol, { least: 0.1, most: 5000, until: BEFORE, measure: PART })
const breaks = (symbol: string) =>
  quantity('voltage', 'direct voltage it breaks', symbol, { least: 1, most: 2000, until: BEFORE, measure: PART })
const onTheBus = {
  capacitance: quantity('capacitance', 'capacitance across its two poles', 'C_x', { least: 1e-9, most: 0.1, measure: BRIDGE }),
  bleeder: quantity('resistance', 'resistor that empties it, always connected', 'R_b', {
    least: 10,
    most: 1e8,
    measure: OHMS,
    says: 'Left out: it has none that anybody knows of.',
  }),
}
const user = (label: string) =>
  group(label, {
    ...onTheBus,
    power: quantity('power', 'power it takes from the bus at most', 'P_u', { least: 1, most: 100_000, measure: PART }),
  })

/** The high-voltage circuit: its parts, and every conductor between them. */
export const highVoltage = group(
  'high voltage',
  {
    parts: mapOf(
      'parts of the circuit',
      'part',
      variants('part', 'kind', {
        'battery box': group('battery box', { box: reference('battery box', 'pack.boxes') }),
        fuse: group('fuse', {
          rating: rated('rated current', 'I_n'),
          voltage: breaks('U_n'),
          breaks: quantity('current', 'current it breaks at most', 'I_br', { least: 10, most: 500_000, until: BEFORE, measure: PART }),
        }),
        contactor: group('contactor', {
          role: choice('what it switches', ['main', 'precharge', 'charging']),
          current: rated('current it carries for ever', 'I_k'),
          voltage: breaks('U_k'),
        }),
        'precharge resistor': group('precharge resistor', {
          resistance: quantity('resistance', 'resistance', 'R_p', { least: 1, most: 1e5, measure: PART }),
          energy: quantity('energy', 'energy it takes in one pulse', 'E_p', { least: 0.1, most: 1e6, until: BEFORE, measure: PART }),
        }),
        'service disconnect': group('service disconnect', { current: rated('current it carries for ever', 'I_d'), voltage: breaks('U_d') }),
        'current sensor': group('current sensor', {}),
        bar: group('bar', {}),
        inverter: group('inverter', { unit: reference('drive unit', 'drive.units'), ...onTheBus }),
        'on-board charger': group('on-board charger', onTheBus),
        'DC inlet': group('DC inlet', {}),
        'DC-DC': user('DC-DC'),
        heater: user('heater'),
        compressor: user('compressor'),
      }),
      'Everything with a terminal on the high-voltage side. Poles are called plus and minus, the two sides of what is passed through in and out.',
    ),
    wires: mapOf(
      'wires',
      'wire',
      group('wire', {
        from: reference(PART_LABEL, 'high-voltage.parts'),
        'from-end': choice('end it starts at', ENDS),
        to: reference(PART_LABEL, 'high-voltage.parts'),
        'to-end': choice('end it goes to', ENDS),
        length: quantity('length', 'length, terminal to terminal', 'ℓ_w', { least: 0.005, most: 30, measure: RUN }),
        section: quantity('conductor size', 'conductor', 'S', { least: 1e-7, most: 5e-4, measure: PRINT }),
        diameter: quantity('length', 'diameter over the jacket', 'D', {
          least: 0.001,
          most: 0.06,
          measure: { tool: 'caliper gauge', accuracy: '± 0.2 mm', minutes: 5 },
          assume: jacketDiameter,
        }),
        insulation: quantity('temperature', 'temperature its insulation stands for years', 'T_ins', {
          least: 333,
          most: 530,
          measure: PRINT,
        }),
        voltage: quantity('voltage', 'voltage it is rated for', 'U_w', { least: 1, most: 5000, measure: PRINT }),
        around: quantity('temperature', 'warmest air along the run', 'T_a', { least: 253, most: 430, measure: AROUND }),
      }),
      'Every conductor, cable or bar, from one end of a part to one end of another.',
    ),
  },
  { says: 'The high-voltage circuit: its parts, and every conductor between them.' },
)
