import { formula } from '../working/formula.ts'
import { HANDBOOK, pressure, time, volume, workedBy } from './symbols.ts'

const hand = workedBy('gas')
const PUMP = { work: 'gas', place: 'a vessel pumped out at a steady pumping speed' } as const
const takes = {
  volume: volume('V', 'volume pumped out'),
  speed: { symbol: 'S', unit: 'm³/s', label: 'pumping speed', shows: 'flow' },
  ultimate: pressure('p_u', 'lowest pressure the pump reaches'),
  from: pressure('p_0', 'absolute pressure before'),
} as const
const LEFT_OUT = `Leaks, hoses, a pump that slows on a low 12 V supply. The UK test asks that the warning goes out within a minute, from empty.`
const tank = { volume: 5.5e-3, speed: 0.5e-3, ultimate: 12e3 }
const cases = [
  [100e3, 30e3, 17.46],
  [56e3, 30e3, 9.83],
] as const
const place = (from: number, to: number): string => `5.5 L at 0.5 L/s from ${from / 1000} to ${to / 1000} kPa`

/** Time a vacuum pump takes from one pressure to another. */
export const pumpDownTime = formula(
  {
    id: 'pump-down-time',
    label: 'Time to pump down',
    gives: time('t', 'time'),
    takes: { ...takes, to: pressure('p', 'absolute pressure wanted') },
    text: 't = V / S · ln((p_0 − p_u) / (p − p_u))',
    source: PUMP,
    leavesOut: LEFT_OUT,
    proof: {
      examples: cases.map(([from, to, gives]) => ({ takes: { ...tank, from, to }, gives, within: 0.005, source: hand(place(from, to)) })),
    },
  },
  ({ volume, speed, ultimate, from, to }) => (volume / speed) * Math.log((from - ultimate) / (to - ultimate)),
)

/** Pressure a vacuum pump reaches in a time. */
export const pumpDownPressure = formula(
  {
    id: 'pump-down-pressure',
    label: 'Pressure after pumping',
    gives: pressure('p', 'absolute pressure reached'),
    takes: { ...takes, time: time('t', 'time') },
    text: 'p = p_u + (p_0 − p_u) · exp(−t · S / V)',
    source: PUMP,
    leavesOut: `${LEFT_OUT} ${HANDBOOK}`,
    proof: {
      examples: cases.map(([from, to, time]) => ({ takes: { ...tank, from, time }, gives: to, within: 10, source: hand(place(from, to)) })),
    },
  },
  ({ volume, speed, ultimate, from, time }) => ultimate + (from - ultimate) * Math.exp((-time * speed) / volume),
)
