import {
  againstOthers,
  boxConductance,
  boxShare,
  branchShare,
  branchTime,
  chargeTable,
  coldCoefficient,
  coldEnergy,
  dropAtHourRate,
  health,
  openCircuit,
  placeAcross,
  placeOfSmallPart,
  resistanceOverCharge,
  wiringResistance,
} from '../assumptions.ts'
import { choice, file, group, mapOf, part, partFor, quantity, words } from '../schema/field.ts'
import { ACROSS, ALONG, UP } from '../schema/reach.ts'
import { OFFER, TAPE } from './tools.ts'

const LABEL = { tool: 'label, seller’s list or datasheet', accuracy: 'as stated', minutes: 15 }
const CURVE = { tool: 'time-current curve of its maker', accuracy: '± 10 %', minutes: 15 }
const TESTER = { tool: 'module tester, discharge at C/3, 25 °C', accuracy: '± 1 %', minutes: 240 }
const PULSE = { tool: '10 s pulse at 50 A or more, sensed at the terminals', accuracy: '± 3 %', minutes: 30 }
// Tools, accuracies and times in this file are common practice.
const SETTING = { tool: 'settings of the BMS', accuracy: 'as set', minutes: 10 }
const REST = { tool: 'meter that shows 1 mV, a day after charging, every module on the same shelf', accuracy: '± 1 mV', minutes: 5 }
const LAMPS = { tool: 'lamps as a load, meter and clamp at the terminals', accuracy: '± 2 %', minutes: 30 }
const RECORD = { tool: 'label and papers of the module', accuracy: 'exact', minutes: 5 }
const STEPS = { tool: 'module tester in steps of charge, an hour of rest after each', accuracy: '± 5 mV', minutes: 1200 }
const RELAXING = { tool: 'pulse of 10 s, then ten minutes of rest, logged at the terminals', accuracy: '± 10 %', minutes: 60 }
const COUNT = { tool: 'count', accuracy: 'exact', minutes: 5 }
const BEFORE = 'before the part is bought' as const

/** Classes of parts that hang on the voltage of the pack, beside the motor's own inverter. */
const ON_PACK_VOLTAGE = [
  'charger',
  'dc-dc',
  'ac-compressor',
  'air-heater',
  'coolant-heater',
  'inverter',
  'drive-unit',
  'insulation-monitor',
] as const

export const pack = group(
  'pack',
  {
    module: group('module', {
      part: part('module', 'cell'),
      chemistry: choice('chemistry', ['NMC', 'NCA', 'LFP', 'LTO'], { until: BEFORE, measure: LABEL }),
      'cells-in-series': quantity('count', 'cells in series in one module', 'n_s,mod', { least: 1, most: 500, measure: LABEL }),
      'cells-in-parallel': quantity('count', 'cells in parallel in one module', 'n_p,mod', { least: 1, most: 500, measure: LABEL }),
      'cell-capacity': quantity('charge', 'capacity of one cell', 'Q_cell', { least: 10, measure: LABEL }),
      state: choice('new or used', ['new', 'used'], { until: BEFORE, measure: LABEL }),
      'cell-resistance': quantity('resistance', 'resistance of one cell, 10 s, 25 °C, half charge', 'R_cell', {
        least: 1e-6,
        measure: PULSE,
        says: 'Left out: from the records of the modules, from the lamp-load test, or from the class of the chemistry.',
      }),
      'drop-at-hour-rate': quantity('voltage', 'voltage a cell loses after 10 s at one-hour current, 25 °C, half charge', 'ΔU_h', {
        least: 0.001,
        most: 1,
        assume: dropAtHourRate,
        measure: PULSE,
        says: 'Resistance times capacity: 55 mV at 60 A in a 60 Ah cell.',
      }),
      'branch-share': quantity('share', 'slow part of the resistance over the 10 s resistance', 's_1', {
        least: 0.01,
        most: 0.99,
        assume: branchShare,
        measure: RELAXING,
      }),
      'branch-time': quantity('time', 'time constant of the slow part', 'τ_1', {
        least: 0.5,
        most: 500,
        assume: branchTime,
        measure: RELAXING,
      }),
      'cold-coefficient': quantity('temperature difference', 'rise of the resistance in the cold', 'B', {
        least: 0,
        most: 8000,
        assume: coldCoefficient,
        says: 'B of R(T) = R(25 °C)·exp(B·(1/T − 1/298.15 K)).',
        measure: { tool: 'pulse of 10 s warm and after a night in the cold', accuracy: '± 10 %', minutes: 60 },
      }),
      'open-circuit': file('open-circuit voltage of a cell over charge', 'curve', 'open-circuit CSV', 'V', {
        assume: openCircuit,
        measure: STEPS,
      }),
      'resistance-over-charge': file('resistance over charge, 1 at half charge', 'curve', 'resistance-over-charge CSV', '1', {
        assume: resistanceOverCharge,
        measure: STEPS,
      }),
      'charge-table': file('charging current over cell temperature, as capacity per hour', 'curve', 'charge-table CSV', '1/s', {
        assume: chargeTable,
        measure: { tool: 'the cell maker’s sheet, charging current against cell temperature', accuracy: 'as stated', minutes: 15 },
        says: 'Only the cell maker’s own table. Left out: a planning line that stops below 2 °C; none for LTO, whose sheet may allow more.',
      }),
      'cold-energy': file('usable energy over cell temperature, 1 at 25 °C', 'curve', 'cold-energy CSV', '1', {
        assume: coldEnergy,
        measure: { tool: 'a module emptied at C/3 at 25, 0 and −20 °C, a night in the cold before each', accuracy: '± 3 %', minutes: 900 },
        says: 'Left out: a planning line of the chemistry; none for LTO, of which no cold run is known.',
      }),
      'cell-shape': choice('shape of the cells', ['pouch', 'prismatic', 'cylindrical'], { measure: LABEL }),
      'cell-fuses': choice('each cell of a group has its own fuse', ['yes', 'no'], {
        measure: LABEL,
        says: 'A fuse or a thin bond that melts, cell by cell.',
      }),
      'pressure-least': quantity('pressure', 'pressure the cell maker asks for, at least', 'p_min', {
        least: 0,
        most: 1e6,
        says: 'Left out: what fixtures of such cells are planned with.',
      }),
      'pressure-most': quantity('pressure', 'pressure the cell maker asks for, at most', 'p_max', { least: 0, most: 1e6 }),
      mass: quantity('mass', 'mass of one module', 'm_mod', {
        least: 0.001,
        most: 2000,
        measure: { tool: 'scale', accuracy: '± 0.1 kg', minutes: 5 },
      }),
      length: quantity('length', 'length of one module', 'ℓ', { least: 0.001, most: 3, measure: TAPE }),
      width: quantity('length', 'width of one module', 'b', { least: 0.001, most: 3, measure: TAPE }),
      height: quantity('length', 'height of one module', 'h', { least: 0.001, most: 3, measure: TAPE }),
      'peak-current': quantity('current', 'peak current of one module', 'I_max', { least: 0.1, until: BEFORE, measure: LABEL }),
      'peak-time': quantity('time', 'module gives its peak for', 't_max', { least: 0.1, until: BEFORE, measure: LABEL }),
      'continuous-current': quantity('current', 'continuous current of one module', 'I_c', { least: 0.1, until: BEFORE, measure: LABEL }),
      'charge-current': quantity('current', 'charging current of one module', 'I_ch', { least: 0.1, until: BEFORE, measure: LABEL }),
      health: quantity('share', 'health: capacity against new', 'H', {
        least: 0.1,
        most: 1.1,
        assume: health,
        measure: TESTER,
        until: BEFORE,
      }),
      price: quantity('money', 'price of one module', 'k_mod', { least: 0, measure: OFFER }),
      have: quantity('count', 'modules there are to use', 'n_have', {
        least: 0,
        most: 5000,
        measure: COUNT,
        says: 'Left out: as many as the pack takes.',
      }),
    }),
    'other-module': group(
      'other form of module',
      {
        'same-cells': choice('its cells are the same, as many side by side in each group', ['yes', 'no'], {
          until: BEFORE,
          measure: LABEL,
          says: 'The very same cell of one maker, from cars of one kind and age. Other cells never stand in one string.',
        }),
        'cells-in-series': quantity('count', 'cells in series in one module of the other form', 'n_s,o', {
          least: 1,
          most: 500,
          measure: LABEL,
        }),
        'in-series': quantity('count', 'modules of the other form in series, beside the modules in series', 'n_o', {
          least: 0,
          most: 1000,
          says: 'Left out: none.',
        }),
        have: quantity('count', 'modules of the other form there are to use', 'n_have,o', {
          least: 0,
          most: 5000,
          measure: COUNT,
          says: 'Left out: as many as the pack takes.',
        }),
        mass: quantity('mass', 'mass of one module of the other form', 'm_o', {
          least: 0.001,
          most: 2000,
          measure: { tool: 'scale', accuracy: '± 0.1 kg', minutes: 5 },
        }),
        length: quantity('length', 'length of one module of the other form', 'ℓ_o', { least: 0.001, most: 3, measure: TAPE }),
        width: quantity('length', 'width of one module of the other form', 'b_o', { least: 0.001, most: 3, measure: TAPE }),
        height: quantity('length', 'height of one module of the other form', 'h_o', { least: 0.001, most: 3, measure: TAPE }),
        price: quantity('money', 'price of one module of the other form', 'k_o', { least: 0, measure: OFFER }),
      },
      {
        says: 'Longer or shorter modules of the same pack, to stand in one string with the others. Cells, limits and health are those of the module. Left out: all modules are alike.',
      },
    ),
    'modules-in-series': quantity('count', 'modules in series', 'n_mod', { least: 1, most: 1000 }),
    strings: quantity('count', 'strings in parallel', 'n_str', { least: 1, most: 50 }),
    'cell-lowest': quantity('voltage', 'lowest cell voltage allowed', 'U_cell,min', { least: 0.5, most: 5, measure: LABEL }),
    'cell-highest': quantity('voltage', 'highest cell voltage allowed', 'U_cell,max', { least: 0.5, most: 5, measure: LABEL }),
    'charge-to': quantity('voltage', 'cell voltage charging stops at', 'U_cell,stop', { least: 0.5, most: 5 }),
    'wiring-resistance': quantity('resistance', 'links, cables, contactors, fuse together', 'R_w', {
      least: 0,
      assume: wiringResistance,
      measure: { tool: 'millivolt drop at 50 A, pack built', accuracy: '± 5 %', minutes: 30 },
    }),
    'box-conductance': quantity('thermal conductance', 'heat through the walls of all boxes per kelvin', 'UA', {
      least: 0.01,
      assume: boxConductance,
      measure: { tool: 'one night, two temperatures', accuracy: '± 10 %', minutes: 30 },
    }),
    compression: choice('what presses the cells', ['module housing', 'fixture', 'none'], {
      says: 'A fixture holds bare cells with the force their maker asks for.',
    }),
    'pressing-force': quantity('force', 'force of the fixture on the face of the cells', 'F_p', {
      least: 0,
      most: 1e5,
      measure: { tool: 'springs or pads of known rate, or torque of the tie rods', accuracy: '± 20 %', minutes: 30 },
      says: 'At 30 to 50 % charge.',
    }),
    levelled: choice('how the modules were levelled', ['charged full one by one', 'not yet'], {
      says: 'Before they were put in series. On the flat of LFP the rest voltage cannot show it.',
    }),
    'strings-apart': quantity('voltage', 'voltage between strings before they are joined', 'ΔU_str', {
      least: 0,
      measure: { tool: 'meter, rested for a day', accuracy: '± 0.1 V', minutes: 10 },
    }),
    limits: group('limits', {
      'fuse-part': partFor('main fuse', { fuse: 'current', 'fuse-voltage': 'voltage' }, 'hv-fuse'),
      'string-fuse-part': partFor('fuse of each string', { 'string-fuse': 'current' }, 'hv-fuse'),
      'contactor-part': partFor('main contactor', { contactor: 'current', 'contactor-voltage': 'voltage' }, 'contactor'),
      fuse: quantity('current', 'main fuse', 'I_fuse', { least: 1, measure: LABEL }),
      'fuse-voltage': quantity('voltage', 'direct voltage the fuse breaks', 'U_fuse', { least: 1, until: BEFORE, measure: LABEL }),
      'string-fuse': quantity('current', 'fuse of each string', 'I_fuse,str', { least: 1, measure: LABEL }),
      contactor: quantity('current', 'main contactor, continuous', 'I_k', { least: 1, measure: LABEL }),
      'contactor-voltage': quantity('voltage', 'voltage the contactor breaks', 'U_k', { least: 1, measure: LABEL }),
      'fuse-melts': quantity('current', 'current that melts the fuse in the time of the motors’ peak', 'I_melt', {
        least: 1,
        until: BEFORE,
        measure: CURVE,
        says: 'Needed where a peak is above the rating of the fuse.',
      }),
      'contactor-peak': quantity('current', 'current the contactor carries for the time of the motors’ peak', 'I_k,max', {
        least: 1,
        until: BEFORE,
        measure: LABEL,
        says: 'Needed where a peak is above its continuous current. No part fills it: a sheet’s peak holds for a time of its own.',
      }),
      bms: quantity('current', 'discharge limit set in the BMS', 'I_bms', {
        least: 1,
        measure: SETTING,
        says: 'Left out: only the cells hold back what the drive draws.',
      }),
      'bms-charge': quantity('current', 'charge limit set in the BMS', 'I_bms,ch', {
        least: 1,
        measure: SETTING,
        says: 'Left out: only the cells hold back recovery and charging.',
      }),
    }),
    bms: group('BMS', {
      part: part('bms'),
      fitted: choice('a BMS is fitted', ['yes', 'no'], { measure: { tool: 'look', accuracy: 'exact', minutes: 1 } }),
      'controls-charger': choice('BMS stops the charger', ['yes', 'no'], { measure: SETTING }),
      'limits-drive': choice('BMS cuts the drive back', ['by lowest cell', 'by pack voltage', 'no'], { measure: SETTING }),
      'counts-charge': choice('BMS counts charge in and out', ['yes', 'no'], { measure: LABEL }),
      'watches-rest': choice('BMS warns when one group sinks at rest', ['yes', 'no'], { measure: SETTING }),
      'watches-temperature': choice('BMS measures cells’ temperatures and cuts drive and charger when hot', ['yes', 'no'], {
        measure: SETTING,
      }),
      cells: quantity('count', 'cells the BMS can watch', 'n_bms', { least: 1, measure: LABEL }),
      'lowest-charge-temperature': quantity('temperature', 'BMS lets no charging in below', 'T_ch,min', {
        least: 213.15,
        most: 333.15,
        measure: SETTING,
        says: 'Left out: the table of the cells alone. Counts for recovery too.',
      }),
    }),
    heater: group('pack heater', {
      power: quantity('power', 'heater power', 'P_h', { least: 0, measure: LABEL }),
      to: quantity('temperature', 'heats to', 'T_h', { least: 213.15, most: 333.15 }),
    }),
    life: group('life', {
      years: quantity('duration', 'years to look ahead', 't', { least: 86400 }),
      'distance-per-year': quantity('distance', 'distance in a year', 's_a', { least: 0 }),
      'parked-at': quantity('share', 'state of charge it is parked at', 'z_p', { least: 0, most: 1 }),
      depth: quantity('share', 'charge taken between two charges', 'd', { least: 0, most: 1 }),
      temperature: quantity('temperature', 'mean temperature of the parked cells through the year', 'T_m', {
        least: 253.15,
        most: 323.15,
        says: 'The mean of the air and two to four kelvin.',
      }),
      swing: quantity('temperature difference', 'warmest month above that mean', 'ΔT', { least: 0, most: 30 }),
    }),
    standing: group('standing', {
      draw: quantity('current', 'current out of the parked pack', 'I_s', {
        least: 0,
        measure: { tool: 'clamp meter that shows 1 mA, ten minutes after locking', accuracy: '± 1 mA', minutes: 20 },
        says: 'DC-DC, BMS and whatever else stays on the pack; until it is built, from their datasheets.',
      }),
      longest: quantity('duration', 'longest time it is left unplugged', 't_s', { least: 3600 }),
    }),
    users: mapOf(
      'parts on pack voltage',
      'part on pack voltage',
      group('part on pack voltage', {
        part: part(...ON_PACK_VOLTAGE),
        lowest: quantity('voltage', 'lowest working voltage', 'U_min', { least: 0, measure: LABEL }),
        highest: quantity('voltage', 'highest working voltage', 'U_max', { least: 1, measure: LABEL }),
      }),
    ),
    boxes: mapOf(
      'battery boxes',
      'battery box',
      group('battery box', {
        modules: quantity('count', 'modules in the box', 'n', { least: 0, most: 2000 }),
        'other-modules': quantity('count', 'modules of the other form in the box', 'n_o', {
          least: 0,
          most: 2000,
          says: 'Left out: none.',
        }),
        x: quantity('length', 'box behind the front axle', 'x', { ...ALONG, measure: TAPE }),
        y: quantity('length', 'box to the right of the centre line', 'y', { ...ACROSS, measure: TAPE }),
        z: quantity('length', 'box above the ground', 'z', { ...UP, measure: TAPE }),
        overhead: quantity('mass', 'box, lid, plates, links', 'm_box', {
          most: 2000,
          least: 0,
          measure: { tool: 'scale, once built; until then from drawings', accuracy: '± 2 kg', minutes: 30 },
        }),
        price: quantity('money', 'price of the box with its hardware', 'k_box', { least: 0, measure: OFFER }),
        where: choice('where', ['engine bay', 'under floor', 'tank space', 'boot', 'cabin', 'tunnel']),
        sealed: choice('sealed against the cabin and vented to the outside', ['yes', 'no'], {
          measure: { tool: 'smoke from a smoke pen inside the box, cabin fan on', accuracy: 'seen or not', minutes: 20 },
          says: 'Asked of a box in the boot, which is one space with the cabin in most cars.',
        }),
      }),
    ),
    unboxed: group(
      'modules in no box yet',
      {
        'box-share': quantity('share', 'boxes and links over the mass of their modules', 'k_box', { least: 0, most: 3, assume: boxShare }),
        x: quantity('length', 'modules in no box behind the front axle', 'x', {
          ...ALONG,
          assume: placeOfSmallPart,
          measure: TAPE,
        }),
        y: quantity('length', 'modules in no box to the right of the centre line', 'y', { ...ACROSS, assume: placeAcross, measure: TAPE }),
        z: quantity('length', 'modules in no box above the ground', 'z', { ...UP, measure: TAPE }),
      },
      { says: 'Read only while the boxes hold fewer modules than the pack has.' },
    ),
    salvage: mapOf(
      'salvaged modules',
      'module',
      group('module record', {
        form: choice('form of the module', ['main', 'other'], { says: 'Where the pack has two. Left out: main.' }),
        serial: words('serial number', { measure: RECORD }),
        source: words('where it came from', { measure: RECORD }),
        history: words('history', { measure: RECORD }),
        capacity: quantity('charge', 'measured capacity', 'Q', { least: 1, measure: TESTER }),
        resistance: quantity('resistance', 'resistance after 10 s', 'R_10', { least: 1e-6, measure: PULSE }),
        'rest-voltage': quantity('voltage', 'rest voltage', 'U_1', { least: 0, measure: REST }),
        'rest-voltage-later': quantity('voltage', 'rest voltage later', 'U_2', {
          least: 0,
          measure: { ...REST, tool: 'the same meter 7 to 14 days later, at the same temperature' },
        }),
        'days-apart': quantity('duration', 'time between the two', 't', {
          least: 3600,
          measure: { tool: 'calendar and clock', accuracy: '± 1 h', minutes: 1 },
        }),
        insulation: quantity('resistance', 'insulation resistance to the case', 'R_iso', {
          least: 0,
          measure: { tool: 'insulation tester at 500 V for 60 s, dry, monitor board unplugged', accuracy: '± 10 %', minutes: 5 },
        }),
        place: words('place in the pack', { says: 'Such as `front 3`: box and position.' }),
        use: choice('use', ['in the pack', 'spare', 'rejected'], { says: 'Left out: in the pack.' }),
        'against-others': quantity('share', 'untested module against the stated health', 'a', {
          least: 0.1,
          most: 1.5,
          assume: againstOthers,
          measure: TESTER,
        }),
      }),
    ),
    'lamp-test': group('lamp-load test', {
      current: quantity('current', 'current drawn', 'I', { least: 0.01, measure: LAMPS }),
      time: quantity('time', 'after', 't', { least: 0.1, measure: { tool: 'watch', accuracy: '± 1 s', minutes: 1 } }),
      before: quantity('voltage', 'voltage before', 'U_0', { least: 0.1, measure: LAMPS }),
      after: quantity('voltage', 'voltage under load', 'U_1', { least: 0.1, measure: LAMPS }),
      temperature: quantity('temperature', 'cell temperature', 'T', {
        measure: { tool: 'thermometer on the cell', accuracy: '± 1 K', minutes: 5 },
      }),
      charge: quantity('share', 'state of charge', 'z', {
        least: 0,
        most: 1,
        measure: { tool: 'rest voltage against the curve of the cell', accuracy: '± 5 %', minutes: 5 },
      }),
      modules: quantity('count', 'modules tested in series', 'n', { least: 1, measure: { tool: 'count', accuracy: 'exact', minutes: 1 } }),
    }),
  },
  { says: 'Cells, modules, strings: voltage window, energy, power.' },
)
