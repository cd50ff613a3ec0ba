import { formula } from '../working/formula.ts'

const torque = (symbol: string, label: string) => ({ symbol, unit: 'N·m', label }) as const
const power = (symbol: string, label: string) => ({ symbol, unit: 'W', label }) as const
const speed = (symbol: string, label: string) => ({ symbol, unit: 'rad/s', label, shows: 'rotational speed' }) as const

/** Torque a motor brakes with at most: the share of its peak that recovery is set to. */
export const recoveryTorque = formula(
  {
    id: 'recovery-torque',
    label: 'Torque of recovery at its strongest',
    gives: torque('M_r', 'torque of recovery'),
    takes: { share: { symbol: 's_r', unit: '1', label: 'share of peak torque', shows: 'share' }, torque: torque('M_max', 'peak torque') },
    text: 'M_r = s_r · M_max',
    source: { work: 'definition', place: 'share of a torque' },
    proof: { none: 'definition' },
  },
  ({ share, torque }) => share * torque,
)
/** Slowest motor speed at which recovery is at its strongest: its full torque, and by it the peak power where top speed allows that. */
export const recoverySpeed = formula(
  {
    id: 'recovery-speed',
    label: 'Speed of the strongest recovery',
    gives: speed('ω_r', 'speed of the strongest recovery'),
    takes: {
      torque: torque('M_r', 'torque of recovery'),
      power: power('P_max', 'peak power'),
      topSpeed: speed('ω_max', 'top speed of the motor'),
    },
    text: 'ω_r = { ω_max if M_r ≤ 0; min(ω_max, P_max / M_r) otherwise }',
    source: { work: 'definition', place: 'power is torque times speed' },
    leavesOut: 'Faster still the shaft gives the same power while its loss changes: a little more may come back there.',
    proof: { none: 'definition' },
  },
  ({ torque, power, topSpeed }) => (torque <= 0 ? topSpeed : Math.min(topSpeed, power / torque)),
)
/** What a generating motor gives to the battery: of the power at its shaft what is not lost. Below zero where the loss eats it all. */
export const generatedPower = formula(
  {
    id: 'generated-power',
    label: 'Electrical power when generating',
    gives: power('P_el', 'electrical power given back'),
    takes: { torque: torque('M', 'torque'), speed: speed('ω', 'motor speed'), loss: power('P_V', 'loss of motor and inverter') },
    text: 'P_el = abs(M) · ω − P_V',
    source: { work: 'definition', place: 'power at the shaft less the loss, which is taken as that of driving' },
    proof: {
      examples: [
        {
          takes: { torque: -60, speed: 400, loss: 2004 },
          gives: 21996,
          within: 1e-9,
          source: {
            work: 'larminie-lowry',
            place: 'eq. 7.23, induction motor at 60 N·m and 400 rad/s: 24 000 W at the shaft',
            mark: 'from memory',
          },
        },
      ],
    },
  },
  ({ torque, speed, loss }) => Math.abs(torque) * speed - loss,
)
/** What of recovery reaches the battery at most: what the motors give back, up to what recovery is set to. */
export const recoveryAtBattery = formula(
  {
    id: 'recovery-at-battery',
    label: 'Recovery that reaches the battery at most',
    gives: power('P_B', 'recovery at the battery'),
    takes: { generated: { ...power('P_k', 'given back by one motor'), many: true }, set: power('P_reg', 'recovery is set to') },
    text: 'P_B = min(P_reg, Σ P_k)',
    source: { work: 'definition', place: 'the lesser of what is given and what is allowed' },
    leavesOut: 'What lamps, pumps and heating take on the way; grip and the brakes that take their part.',
    proof: { none: 'definition' },
  },
  ({ generated, set }) => {
    let sum = 0
    for (const p of generated) sum += p
    return Math.min(set, sum)
  },
)
