import { formula } from '../working/formula.ts'
import { area, force, hand, length, power, pressure, share, turns } from './symbols.ts'

const LITRE_A_MINUTE = 1e-3 / 60
const flow = (symbol: string, label: string) => ({ symbol, unit: 'm³/s', label, shows: 'flow' }) as const
const cylinder = {
  bore: length('D', 'bore of the steering cylinder'),
  rod: length('d', 'rod through it'),
} as const
const case_ = { bore: 0.042, rod: 0.026, force: 7500, travel: 0.05, turns: 1.25, leakage: 0.15 }
const place = 'piston 42 on 26 mm, 7.5 kN, 50 mm in one turn, 1.25 turns a second'

/** What a hydraulic rack asks of its pump: pressure by force, flow by how fast the handwheel is turned. */
export const hydraulicAssist = formula(
  {
    id: 'hydraulic-assist',
    label: 'Hydraulic assist of a rack',
    gives: {
      area: area('A', 'area of the piston'),
      pressure: pressure('p', 'pressure'),
      flow: flow('Q', 'flow'),
      needed: flow('Q_p', 'flow of the pump, leakage added'),
      power: power('P_h', 'hydraulic power'),
    },
    takes: {
      ...cylinder,
      force: force('F', 'force on the rack'),
      travel: length('C', 'travel of the rack in one turn'),
      turns: turns('n', 'turns of the handwheel a second, 1.0 to 1.5'),
      leakage: { ...share('q', 'leakage, 10 to 20 %'), holds: [0, 0.5] },
    },
    text: 'A = π / 4 · (D² − d²)\np = F / A\nQ = A · C · n\nQ_p = Q · (1 + q)\nP_h = p · Q',
    source: { work: 'statics', place: 'piston; turns and leakage are common practice' },
    leavesOut: 'Relief valves open at 80 to 110 bar; at rest the pump still works against a few bar (common practice).',
    proof: {
      examples: [
        { takes: case_, gives: { area: 854.5e-6 }, within: 0.05e-6, source: hand(place) },
        { takes: case_, gives: { pressure: 87.8e5 }, within: 0.05e5, source: hand(place) },
        {
          takes: case_,
          gives: { flow: 3.2 * LITRE_A_MINUTE, needed: 3.69 * LITRE_A_MINUTE },
          within: 0.005 * LITRE_A_MINUTE,
          source: hand(place),
        },
        { takes: case_, gives: { power: 469 }, within: 0.5, source: hand(place) },
      ],
    },
  },
  ({ bore, rod, force, travel, turns, leakage }) => {
    const area = (Math.PI / 4) * (bore ** 2 - rod ** 2),
      pressure = force / area,
      flow = area * travel * turns
    return { area, pressure, flow, needed: flow * (1 + leakage), power: pressure * flow }
  },
)

/** What the electric motor of a steering pump takes. */
export const steeringPumpPower = formula(
  {
    id: 'steering-pump-power',
    label: 'Power of an electric steering pump',
    gives: { power: power('P', 'electric power'), current: { symbol: 'I', unit: 'A', label: 'supply current' } },
    takes: {
      pressure: pressure('p', 'pressure'),
      flow: flow('Q_p', 'flow of the pump, leakage added'),
      pump: { ...share('η_p', 'efficiency of the pump'), holds: [0.3, 1] },
      motor: { ...share('η_m', 'efficiency of its motor'), holds: [0.3, 1] },
      voltage: { symbol: 'U', unit: 'V', label: 'supply voltage' },
    },
    text: 'P = p · Q_p / (η_p · η_m)\nI = P / U',
    source: { work: 'statics', place: 'pressure and flow' },
    proof: {
      examples: [
        {
          takes: { pressure: 87.77e5, flow: 3.6857 * LITRE_A_MINUTE, pump: 0.6, motor: 0.75, voltage: 13 },
          gives: { power: 1198 },
          within: 0.5,
          source: hand(`${place}, 15 % leakage`),
        },
        {
          takes: { pressure: 87.77e5, flow: 3.6857 * LITRE_A_MINUTE, pump: 0.6, motor: 0.75, voltage: 13 },
          gives: { current: 92 },
          within: 0.5,
          source: hand(`${place}, 13 V`),
        },
      ],
    },
  },
  ({ pressure, flow, pump, motor, voltage }) => {
    const power = (pressure * flow) / (pump * motor)
    return { power, current: power / voltage }
  },
)
