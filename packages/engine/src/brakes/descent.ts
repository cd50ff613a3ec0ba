import { GRAVITY } from '../physics/gravity.ts'
import { formula } from '../working/formula.ts'
import { area, cooling, energy, HANDBOOK, hand, mass, power, ratio, rise, share, slope, specificHeat, speed, time } from './symbols.ts'

const hill = { mass: 1500, speed: 50 / 3.6, slope: 0.1, rolling: 0.011, dragArea: 0.62, air: 1.2, time: 6000 / (50 / 3.6) }
const place = '1500 kg down 10 % for 6 km at 50 km/h'

/** Power a car must brake with to hold its speed down a hill. */
export const descentPower = formula(
  {
    id: 'descent-power',
    label: 'Braking power down a hill',
    gives: { power: power('P', 'braking power'), energy: energy('E', 'over the whole hill') },
    takes: {
      mass: mass('m', 'mass'),
      speed: speed('v', 'speed held'),
      slope: slope('p', 'slope'),
      rolling: ratio('c_r', 'rolling resistance'),
      dragArea: area('A_d', 'drag area'),
      air: { symbol: 'ρ', unit: 'kg/m³', label: 'density of the air', shows: 'density' },
      time: time('t', 'time down the hill'),
    },
    uses: [GRAVITY],
    text: 'α = atan(p)\nP = m · g · v · (sin(α) − c_r · cos(α)) − ½ · ρ · A_d · v³\nE = P · t',
    source: { work: 'statics', place: 'weight down a slope less the road load' },
    leavesOut: `Wind, bends, drag of the driveline. ${HANDBOOK}`,
    proof: {
      examples: [
        { takes: hill, gives: { power: 17.1e3 }, within: 5, source: hand(place) },
        { takes: hill, gives: { energy: 2.05 * 3.6e6 }, within: 0.005 * 3.6e6, source: hand(place) },
      ],
    },
  },
  ({ mass, speed, slope, rolling, dragArea, air, time }) => {
    const angle = Math.atan(slope)
    const power = mass * GRAVITY.value * speed * (Math.sin(angle) - rolling * Math.cos(angle)) - 0.5 * air * dragArea * speed ** 3
    return { power, energy: power * time }
  },
)

const brakes = { power: 17.1e3, motors: 0, part: 0.72, cooling: 5.4, time: 432, rotor: 6.5, heat: 500 }

/** How much a long descent warms one rotor. With a full battery the motors take nothing: look at that first. */
export const descentHeating = formula(
  {
    id: 'descent-heating',
    label: 'Rotors warm down a hill',
    gives: rise('ΔT', 'rotors of the axle warm by'),
    takes: {
      power: power('P', 'braking power'),
      motors: power('P_m', 'taken by the motors'),
      part: share('β', 'share of the brake force on this axle'),
      cooling: cooling('G', 'cooling of one rotor, W for each K'),
      time: time('t', 'time down the hill'),
      rotor: mass('m_r', 'one rotor'),
      heat: specificHeat('c', 'specific heat of the rotors'),
    },
    text: 'ΔT = β · (P − P_m) / (2 · G) · (1 − exp(−G · t / (m_r · c)))',
    source: { work: 'heat', place: 'one node, steady heat' },
    leavesOut:
      'Radiation: the figure is an upper bound. Wet brake fluid boils at 140 °C (DOT 3), 155 °C (DOT 4), 180 °C (DOT 5.1) by FMVSS 116 (from memory).',
    proof: {
      examples: [
        { takes: brakes, gives: 584, within: 0.5, source: hand(`${place}, friction brakes alone, rotors of 6.5 kg`) },
        { takes: { ...brakes, motors: 12e3 }, gives: 174, within: 0.5, source: hand(`${place}, motors taking 12 kW`) },
      ],
    },
  },
  ({ power, motors, part, cooling, time, rotor, heat }) =>
    ((part * (power - motors)) / (2 * cooling)) * (1 - Math.exp((-cooling * time) / (rotor * heat))),
)
