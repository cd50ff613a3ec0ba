import { formula } from '../working/formula.ts'
import { hand, moment, power, share, turns } from './symbols.ts'

const amps = (symbol: string, label: string) => ({ symbol, unit: 'A', label }) as const
const VOLTAGE = { symbol: 'U', unit: 'V', label: 'supply voltage' } as const

/** What electric assist on the column gives and takes from the 12 V supply. */
export const columnAssist = formula(
  {
    id: 'column-assist',
    label: 'Electric assist on the column',
    gives: {
      assist: moment('T_a', 'torque of the assist'),
      shaft: power('P_s', 'power at the column'),
      power: power('P', 'electric power'),
      current: amps('I', 'supply current'),
    },
    takes: {
      needed: moment('T', 'torque the handwheel needs'),
      driver: moment('T_d', 'torque of the driver, 3 to 5 N·m'),
      turns: turns('n', 'turns of the handwheel a second'),
      efficiency: { ...share('η', 'efficiency of motor and worm, 0.5 to 0.6'), holds: [0.3, 1] },
      voltage: VOLTAGE,
    },
    text: 'T_a = T − T_d\nP_s = 2 · π · n · T_a\nP = P_s / η\nI = P / U',
    source: { work: 'statics', place: 'torque and turns; torque of the driver and efficiency are common practice' },
    leavesOut: 'Usual on the column up to 8 to 9 kN at the rack, on the rack up to 18 kN (common practice).',
    proof: {
      examples: (
        [
          [{ assist: 34.9 }, 0.05],
          [{ shaft: 219, power: 399 }, 0.5],
          [{ current: 33.2 }, 0.05],
        ] as const
      ).map(([gives, within]) => ({
        takes: { needed: 38.9, driver: 4, turns: 1, efficiency: 0.55, voltage: 12 },
        gives,
        within,
        source: hand('38.9 N·m, one turn a second, 12 V'),
      })),
    },
  },
  ({ needed, driver, turns, efficiency, voltage }) => {
    const assist = needed - driver,
      shaft = 2 * Math.PI * turns * assist,
      power = shaft / efficiency
    return { assist, shaft, power, current: power / voltage }
  },
)

/** What assist held against its stop takes: heat in the winding and nothing else. */
export const assistAtStop = formula(
  {
    id: 'assist-at-stop',
    label: 'Supply current of assist held at the stop',
    gives: amps('I', 'supply current'),
    takes: {
      motor: amps('I_m', 'current of the motor'),
      winding: { symbol: 'R', unit: 'Ω', label: 'resistance of its winding' },
      voltage: VOLTAGE,
    },
    text: 'I = I_m² · R / U',
    source: { work: 'circuits', place: 'power in a resistance' },
    leavesOut: 'Losses of the bridge.',
    proof: { none: 'elementary' },
  },
  ({ motor, winding, voltage }) => (motor ** 2 * winding) / voltage,
)
