import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { cooling, mass, rise, specificHeat, speed, temperature, time, workedBy } from './symbols.ts'

const hand = workedBy('heat')
const TYPE_1 = { work: 'eu-71-320', place: 'Annex II 1.3.1, heating run of cars; UN R13-H asks for the same' } as const
const CAP = standard('heating-run-speed', 'Heating run, highest speed before a stop', 'v_c', 120 / 3.6, 'm/s', TYPE_1)
const PART = standard('heating-run-share', 'Heating run, speed before a stop over top speed', 'q', 0.8, '1', TYPE_1)

/** Speeds between which the heating run brakes: 15 stops, 45 s from start to start. */
export const heatingRunSpeeds = formula(
  {
    id: 'heating-run-speeds',
    label: 'Speeds of the heating run',
    gives: { from: speed('v_1', 'speed before each stop'), to: speed('v_2', 'speed after it') },
    takes: { top: speed('v', 'top speed') },
    uses: [CAP, PART],
    text: 'v_1 = min(q · v, v_c)\nv_2 = v_1 / 2',
    source: TYPE_1,
    leavesOut:
      'A car that cannot regain its speed in 45 s: it brakes from what it has reached (UN R13 Annex 4 1.5.1.6, as a later text quotes it). 3 m/s² at the first stop, the pedal force then unchanged.',
    proof: {
      examples: [
        {
          takes: { top: 130 / 3.6 },
          gives: { from: 104 / 3.6, to: 52 / 3.6 },
          within: 1e-9,
          source: hand('130 km/h at most: from 104 to 52'),
        },
        {
          takes: { top: 170 / 3.6 },
          gives: { from: 120 / 3.6, to: 60 / 3.6 },
          within: 1e-9,
          source: hand('170 km/h at most: from 120 to 60'),
        },
      ],
    },
  },
  ({ top }) => {
    const from = Math.min(PART.value * top, CAP.value)
    return { from, to: from / 2 }
  },
)

const run = { stops: 15, each: 69.231, interval: 45, cooling: 9.6, rotor: 6.5, heat: 500, around: 293.15 }
const place = '1500 kg, 120 to 60 km/h every 45 s, rotors of 6.5 kg'

/** Rotors after many stops at one pace: each stop warms them, the air cools them between. */
export const repeatedStops = formula(
  {
    id: 'repeated-stops',
    label: 'Rotors after repeated stops',
    gives: {
      decay: { symbol: 'a', unit: '1', label: 'interval over time constant of cooling', shows: 'ratio' },
      hot: temperature('θ_n', 'rotors after the last stop'),
      limit: temperature('θ_m', 'rotors after endless stops'),
    },
    takes: {
      stops: { symbol: 'n', unit: '1', label: 'stops', shows: 'count' },
      each: rise('ΔT', 'rotors warm in one stop'),
      interval: time('t_c', 'from one stop to the next'),
      cooling: cooling('G', 'cooling of one rotor, W for each K'),
      rotor: mass('m_r', 'one rotor'),
      heat: specificHeat('c', 'specific heat of the rotors'),
      around: temperature('θ_0', 'air around'),
    },
    text: 'a = G · t_c / (m_r · c)\nθ_n = θ_0 + ΔT · (1 − exp(−n · a)) / (1 − exp(−a))\nθ_m = θ_0 + ΔT / (1 − exp(−a))',
    source: { work: 'heat', place: 'one node warmed in steps and cooled between, as Limpert, Brake Design and Safety, ch. 3' },
    leavesOut:
      'Radiation, and the time a stop takes. Cooling 3 to 6 W/K at town speed, 8 to 12 W/K ventilated at 80 to 100 km/h; ordinary pads to 500 °C (common practice).',
    proof: {
      examples: [
        { takes: run, gives: { decay: 0.1329 }, within: 0.00005, source: hand(place) },
        { takes: run, gives: { hot: 500 + 273.15, limit: 576 + 273.15 }, within: 0.5, source: hand(place) },
        { takes: { ...run, each: 60 }, gives: { hot: 436 + 273.15 }, within: 0.5, source: hand('the same car at 1300 kg') },
      ],
    },
  },
  ({ stops, each, interval, cooling, rotor, heat, around }) => {
    const decay = (cooling * interval) / (rotor * heat),
      once = 1 - Math.exp(-decay)
    return { decay, hot: around + (each * (1 - Math.exp(-stops * decay))) / once, limit: around + each / once }
  },
)
