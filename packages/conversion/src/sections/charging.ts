import {
  chargerEfficiency,
  chargerFixedLoss,
  chargerSquareLoss,
  chargeTaper,
  placeAcross,
  placeOfSmallPart,
  standingPower,
} from '../assumptions.ts'
import { choice, file, group, mapOf, part, quantity } from '../schema/field.ts'
import { ACROSS, ALONG, UP } from '../schema/reach.ts'
import { TAPE, WEIGH } from './tools.ts'

// Tools, accuracies and times in this file are common practice.
const PLATE = { tool: 'datasheet or type plate', accuracy: 'as stated', minutes: 15 }
const MAINS = { tool: 'breaker and label at the socket; an electrician where in doubt', accuracy: 'as stated', minutes: 15 }

/** The efficiency once more, at a power that a weaker outlet gives. */
const chargerPoint = (label: string) =>
  group(label, {
    power: quantity('power', 'power at the wall', 'P_1', {
      least: 50,
      measure: { tool: 'energy meter at the socket, a charger or lead set to a low current', accuracy: '± 2 %', minutes: 30 },
    }),
    efficiency: quantity('share', 'efficiency at this power, wall to pack', 'η_1', {
      least: 0.3,
      most: 1,
      measure: { tool: 'energy meter at the socket, meter and clamp at the pack', accuracy: '± 2 %', minutes: 30 },
    }),
  })

export const charging = group(
  'charging',
  {
    charger: group('on-board charger', {
      part: part('charger'),
      power: quantity('power', 'power of the charger', 'P_ch', { least: 100, measure: PLATE }),
      'lowest-voltage': quantity('voltage', 'lowest output voltage', 'U_ch,min', { least: 1, measure: PLATE }),
      'highest-voltage': quantity('voltage', 'highest output voltage', 'U_ch,max', { least: 1, measure: PLATE }),
      current: quantity('current', 'greatest output current', 'I_ch', { least: 0.1, measure: PLATE }),
      phases: quantity('count', 'phases it uses', 'n_ph', { least: 1, most: 3, measure: PLATE }),
      efficiency: quantity('share', 'efficiency of the charger, wall to pack', 'η_ch', {
        least: 0.5,
        most: 1,
        assume: chargerEfficiency,
        measure: { tool: 'energy meter at the socket, meter and clamp at the pack', accuracy: '± 2 %', minutes: 30 },
        says: 'At full power. What the car draws meanwhile counts as arriving.',
      }),
      'fixed-loss': quantity('share', 'share of the loss at full power that stays at any power', 's_0', {
        least: 0,
        most: 1,
        assume: chargerFixedLoss,
        says: 'Not read where an efficiency at part load is given.',
      }),
      'square-loss': quantity('share', 'share of the loss at full power that grows with the square of the power', 's_2', {
        least: 0,
        most: 1,
        assume: chargerSquareLoss,
        says: 'Not read where efficiencies at part load and at half load are given.',
      }),
      'part-load': chargerPoint('charger at part load'),
      'half-load': chargerPoint('charger at half load'),
      'standing-power': quantity('power', 'what the car draws while charging', 'P_st', {
        least: 0,
        most: 2000,
        assume: standingPower,
        measure: { tool: 'energy meter at the socket, charger in its last minutes', accuracy: '± 5 %', minutes: 30 },
      }),
      'set-to': quantity('voltage', 'pack voltage it is set to', 'U_set', {
        least: 1,
        measure: { tool: 'settings of the charger', accuracy: 'as set', minutes: 10 },
      }),
      mass: quantity('mass', 'mass of the charger', 'm_ch', {
        least: 0,
        most: 500,
        measure: WEIGH,
        says: 'Not asked where a charger is among the parts put in.',
      }),
      x: quantity('length', 'charger behind the front axle', 'x', { ...ALONG, measure: TAPE, assume: placeOfSmallPart }),
      y: quantity('length', 'charger to the right of the centre line', 'y', { ...ACROSS, measure: TAPE, assume: placeAcross }),
      z: quantity('length', 'charger above the ground', 'z', { ...UP, measure: TAPE }),
      price: quantity('money', 'price of the charger', 'k_ch', {
        least: 0,
        says: 'Not counted where a charger is among the parts put in: its price stands there.',
        measure: { tool: 'written offer', accuracy: 'as stated', minutes: 15 },
      }),
    }),
    inlet: group('AC inlet', {
      part: part('charge-inlet'),
      current: quantity('current', 'current the AC inlet carries for hours', 'I_inl', { least: 1, measure: PLATE }),
      phases: quantity('count', 'phases of the AC inlet', 'n_inl', {
        least: 1,
        most: 3,
        measure: PLATE,
        says: 'Left out: as many as the charger takes.',
      }),
      mass: quantity('mass', 'mass of the AC inlet with its cable', 'm_inl', {
        least: 0,
        most: 100,
        measure: WEIGH,
        says: 'Not asked where an inlet is among the parts put in, or no part is chosen here.',
      }),
      x: quantity('length', 'AC inlet behind the front axle', 'x', { ...ALONG, measure: TAPE, assume: placeOfSmallPart }),
      y: quantity('length', 'AC inlet to the right of the centre line', 'y', { ...ACROSS, measure: TAPE, assume: placeAcross }),
      z: quantity('length', 'AC inlet above the ground', 'z', { ...UP, measure: TAPE }),
      price: quantity('money', 'price of the AC inlet', 'k_inl', {
        least: 0,
        says: 'Not counted where an inlet is among the parts put in: its price stands there.',
        measure: { tool: 'written offer', accuracy: 'as stated', minutes: 15 },
      }),
    }),
    dc: group('DC inlet', {
      'inlet-current': quantity('current', 'current the inlet is rated for', 'I_in', { least: 1, measure: PLATE }),
      'inlet-voltage': quantity('voltage', 'voltage the inlet is rated for', 'U_in', { least: 1, measure: PLATE }),
    }),
    taper: file('charging current over charge, as a share of the highest', 'curve', 'charge-taper CSV', '1', {
      assume: chargeTaper,
      says: 'Only the cell maker’s own table. Left out: the taper of its class.',
      measure: PLATE,
    }),
    'blocks-drive': choice('driving is blocked while plugged in', ['yes', 'no'], {
      measure: { tool: 'plug in and try, wheels off the ground', accuracy: 'exact', minutes: 10 },
    }),
    places: mapOf(
      'charging places',
      'charging place',
      group('charging place', {
        socket: choice('socket', ['household socket', 'dedicated point', 'industrial socket', 'three-phase point', 'DC post'], {
          measure: MAINS,
        }),
        voltage: quantity('voltage', 'mains voltage', 'U_m', { least: 50, most: 1000, measure: MAINS }),
        current: quantity('current', 'current of the circuit', 'I_m', { least: 1, measure: MAINS }),
        phases: quantity('count', 'phases', 'n_ph', { least: 1, most: 3, measure: MAINS }),
        power: quantity('power', 'power of the post', 'P_post', { least: 100, measure: MAINS }),
        hours: quantity('duration', 'hours parked there', 't_p', { least: 60 }),
        cable: quantity('current', 'current the cable is rated for', 'I_cable', { least: 1, measure: PLATE }),
        'set-to': quantity('current', 'current the wall box or the lead’s control box lets the car draw', 'I_set', {
          least: 1,
          measure: { tool: 'switch, sheet or app of the wall box; plate of the control box', accuracy: 'as stated', minutes: 10 },
          says: 'Left out: a lead with its own control box lets the car draw what the cable is rated for.',
        }),
        extension: choice('extension lead or adaptor in between', ['yes', 'no'], {
          measure: { tool: 'look', accuracy: 'exact', minutes: 1 },
        }),
        'price-per-energy': quantity('money per energy', 'price of energy', 'k_E', {
          least: 0,
          says: 'Left out: no price of a charge is told.',
          measure: { tool: 'bill or tariff', accuracy: 'as stated', minutes: 5 },
        }),
      }),
    ),
  },
  { says: 'Where and how fast it is charged.' },
)
