import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { amps, byCircuit, count, ohms, practice, seconds, share, volts, watts } from './symbols.ts'

const sheet = (place: string) => ({ work: 'contactor-sheets', place }) as const
const SMALL = 'data sheet of a 250 A class contactor'
const LARGE = 'data sheet of a 500 A class contactor'
const STEPS = practice('sequence of contactors')

/** What two published sheets state for breaks at the end of life: an example of the size of such limits, never a limit of the part that is fitted. */
export const PUBLISHED_BREAKS = {
  'once at 320 V': standard('contactor.break-320', 'one break at 320 V', 'I_br', 2000, 'A', sheet(`one break at 320 V, ${LARGE}`)),
  'once at 400 V, forward': standard('contactor.break-400', 'one break at 400 V', 'I_br', 2000, 'A', sheet(`one break forward, ${SMALL}`)),
  'twenty times, backward': standard(
    'contactor.break-back',
    'twenty breaks backward',
    'I_br',
    200,
    'A',
    sheet(`breaks in reverse, ${SMALL}`),
  ),
} as const
/** Resistance of a closed contact by a published sheet: at most 60 mV at 200 A. */
export const PUBLISHED_CONTACT = standard('contactor.contact', 'closed contact', 'R_c', 0.3e-3, 'Ω', sheet(`drop at 200 A, ${LARGE}`))

const TIMEOUT = standard('precharge.timeout', 'timeout over design time', 'k_out', 2, '1', STEPS)
const TOO_FAST = standard('precharge.too-fast', 'too fast below this part of the design time', 'k_min', 0.3, '1', STEPS)
export const APART = standard('closing.apart', 'voltage across the main contact when it closes, at most', 'ΔU_max', 20, 'V', STEPS)
export const REACHED = standard('closing.share', 'share of the pack voltage when it closes, at least', 'p_min', 0.95, '1', STEPS)
const WELD_WAIT = standard('weld-test.wait', 'least wait', 't_50', 0.05, 's', STEPS)
const WELD_TAUS = standard('weld-test.constants', 'wait over the precharge time constant', 'k_w', 0.11, '1', STEPS)

/** Heat in a closed contact. */
export const contactLoss = formula(
  {
    id: 'contact-loss',
    label: 'Heat in a closed contact',
    gives: watts('P_c', 'heat'),
    takes: { current: amps('I', 'current'), resistance: ohms('R_c', 'contact') },
    text: 'P_c = I² · R_c',
    source: { work: 'circuits', place: 'power in a resistor' },
    proof: {
      examples: [{ takes: { current: 239, resistance: 0.3e-3 }, gives: 17.1, within: 0.05, source: byCircuit('239 A through 0.3 mΩ') }],
    },
  },
  ({ current, resistance }) => current ** 2 * resistance,
)

/** The window in which a precharge must end: later is a load or a short on the bus, sooner is a bus without its capacitors. */
export const prechargeWindow = formula(
  {
    id: 'precharge-window',
    label: 'Window of a precharge',
    gives: { soonest: seconds('t_min', 'too fast before'), timeout: seconds('t_out', 'timeout') },
    takes: { design: seconds('t', 'design time of the precharge') },
    uses: [TIMEOUT, TOO_FAST],
    text: `t_min = k_min · t
t_out = k_out · t`,
    source: STEPS,
    leavesOut: 'An acceptance test may set the timeout nearer, at one and a half times.',
    proof: {
      examples: [{ takes: { design: 0.5 }, gives: { soonest: 0.15, timeout: 1 }, within: 1e-12, source: byCircuit('design time 0.5 s') }],
    },
  },
  ({ design }) => ({ soonest: TOO_FAST.value * design, timeout: TIMEOUT.value * design }),
)

/**
 * Whether the main contactor may close: enough of the pack voltage, and little enough across the contact. Of one published part the contacts last 50 000
 * closings at 90 % of the pack voltage and 50 at 80 % (320 V, 2500 A).
 */
export const mayClose = formula(
  {
    id: 'contactor-may-close',
    label: 'May the main contactor close',
    gives: { apart: volts('ΔU', 'across the contact'), may: count('c', '1: may close, 0: must stay open') },
    takes: { pack: { ...volts('U', 'pack'), holds: [60, 1000] }, bus: { ...volts('u', 'bus'), holds: [0, 1000] } },
    uses: [APART, REACHED],
    text: `ΔU = |U − u|
c = { 1 if u ≥ p_min · U and ΔU ≤ ΔU_max; 0 otherwise }`,
    source: STEPS,
    leavesOut: 'The order of steps, interlock and insulation, which come before.',
    proof: {
      examples: [
        {
          takes: { pack: 400, bus: 380.085 },
          gives: { apart: 19.915, may: 1 },
          within: 1e-9,
          source: byCircuit('400 V, 0.3 s through 100 Ω onto 1 mF'),
        },
        { takes: { pack: 400, bus: 347.157 }, gives: { may: 0 }, within: 0, source: byCircuit('400 V, load of 900 Ω left on') },
        { takes: { pack: 700, bus: 672 }, gives: { apart: 28, may: 0 }, within: 1e-9, source: byCircuit('96 % of 700 V leaves 28 V') },
      ],
    },
  },
  ({ pack, bus }) => {
    const apart = Math.abs(pack - bus)
    return { apart, may: bus >= REACHED.value * pack && apart <= APART.value ? 1 : 0 }
  },
)

/**
 * Whether a contactor may open at a current. Its blow-out magnets often work one way only: backward the limit is far lower. Above the limit, or above the
 * voltage the limit is stated for, the fuse must clear.
 */
export const mayOpen = formula(
  {
    id: 'contactor-may-open',
    label: 'May the contactor open',
    gives: { limit: amps('I_br', 'break limit in this direction'), may: count('o', '1: may open, 0: leave it to the fuse') },
    takes: {
      current: amps('I', 'current, forward positive'),
      voltage: volts('U', 'pack voltage'),
      forward: amps('I_fw', 'break limit forward'),
      backward: amps('I_bw', 'break limit backward'),
      rated: volts('U_br', 'voltage the limits are stated for'),
    },
    text: `I_br = { I_fw if I ≥ 0; I_bw otherwise }
o = { 1 if |I| ≤ I_br and U ≤ U_br; 0 otherwise }`,
    source: sheet(`break limits by direction, ${SMALL}`),
    leavesOut: 'Breaks already made, which use the limit up; height above the limit of the sheet; inductive loads.',
    proof: {
      examples: [
        {
          takes: { current: 2100, voltage: 400, forward: 2000, backward: 200, rated: 400 },
          gives: { limit: 2000, may: 0 },
          within: 0,
          source: sheet(`2100 A against one break of 2000 A at 400 V, ${SMALL}; recomputed`),
        },
        {
          takes: { current: -300, voltage: 400, forward: 2000, backward: 200, rated: 400 },
          gives: { limit: 200, may: 0 },
          within: 0,
          source: sheet(`300 A against 200 A backward, ${SMALL}; recomputed`),
        },
        {
          takes: { current: 300, voltage: 400, forward: 2000, backward: 200, rated: 400 },
          gives: { limit: 2000, may: 1 },
          within: 0,
          source: sheet(`300 A against 2000 A forward, ${SMALL}; recomputed`),
        },
      ],
    },
  },
  ({ current, voltage, forward, backward, rated }) => {
    const limit = current >= 0 ? forward : backward
    return { limit, may: Math.abs(current) <= limit && voltage <= rated ? 1 : 0 }
  },
)

/** How long to watch the bus with one main contactor closed before its stillness tells that no other contact is welded. */
export const weldTestWait = formula(
  {
    id: 'weld-test-wait',
    label: 'Wait of the weld test',
    gives: { wait: seconds('t_w', 'wait'), rise: share('p_w', 'rise of the bus by then if the precharge contact is welded') },
    takes: { constant: seconds('τ', 'time constant of the precharge') },
    uses: [WELD_WAIT, WELD_TAUS],
    text: `t_w = max(t_50, k_w · τ)
p_w = 1 − exp(−t_w / τ)`,
    source: STEPS,
    leavesOut: 'A load on the bus, which slows and lowers the rise.',
    proof: {
      examples: [
        { takes: { constant: 0.1669041 }, gives: { wait: 0.05 }, within: 1e-12, source: byCircuit('166.9 Ω onto 1 mF') },
        { takes: { constant: 1 }, gives: { wait: 0.11 }, within: 1e-12, source: byCircuit('a slow precharge, 1 s') },
        { takes: { constant: 1 }, gives: { rise: 0.10417 }, within: 5e-6, source: byCircuit('a slow precharge, 1 s: a tenth is reached') },
      ],
    },
  },
  ({ constant }) => {
    const wait = Math.max(WELD_WAIT.value, WELD_TAUS.value * constant)
    return { wait, rise: 1 - Math.exp(-wait / constant) }
  },
)
