import { formula } from '../working/formula.ts'
import { byCircuit, volts } from './symbols.ts'

const speed = (symbol: string, label: string) => ({ symbol, unit: 'rad/s', label, shows: 'rotational speed' }) as const
const FLUX = { work: 'circuits', place: 'induced voltage of a constant flux rises with speed' } as const
const PEAK = volts('U_1', 'peak between two phases at the stated speed, no load')
const STATED = speed('ω_1', 'stated speed')
const RPM = (2 * Math.PI) / 60

/** Peak between two phases from what a meter or a data sheet gives, the rms value. */
export const backEmfPeak = formula(
  {
    id: 'back-emf-peak',
    label: 'Peak back-EMF from its rms value',
    gives: PEAK,
    takes: { rms: volts('U_rms', 'rms between two phases at the stated speed, no load') },
    text: 'U_1 = √2 · U_rms',
    source: { work: 'circuits', place: 'peak of a sine' },
    leavesOut: 'Windings whose voltage is no sine: read the peak on an oscilloscope.',
    proof: { examples: [{ takes: { rms: 230 }, gives: 325.27, within: 0.005, source: byCircuit('230 V rms') }] },
  },
  ({ rms }) => Math.SQRT2 * rms,
)

/**
 * What a turning motor with magnets puts between two phases. The diodes of the inverter carry it to the bus with every contactor open: towed, pushed, or
 * turned on the lift.
 */
export const backEmf = formula(
  {
    id: 'back-emf',
    label: 'Peak back-EMF at a speed',
    gives: volts('U_e', 'peak between two phases'),
    takes: { peak: PEAK, stated: STATED, speed: speed('ω', 'motor speed') },
    text: 'U_e = U_1 · ω / ω_1',
    source: FLUX,
    leavesOut: 'Warm magnets, a few per cent weaker; cold ones, as much stronger; the drop of the diodes.',
    proof: {
      examples: [
        {
          takes: { peak: 100, stated: 1000 * RPM, speed: 9000 * RPM },
          gives: 900,
          within: 1e-9,
          source: byCircuit('100 V at 1000/min, turned at 9000/min'),
        },
      ],
    },
  },
  ({ peak, stated, speed }) => (peak * speed) / stated,
)

/** Motor speed at which the back-EMF reaches a bus voltage: the pack’s, above which it charges unasked, or the rating, above which it destroys. */
export const backEmfSpeed = formula(
  {
    id: 'back-emf-speed',
    label: 'Speed at which the back-EMF passes the bus',
    gives: speed('ω_e', 'motor speed'),
    takes: { peak: PEAK, stated: STATED, bus: volts('U_b', 'bus voltage or rating') },
    text: 'ω_e = ω_1 · U_b / U_1',
    source: FLUX,
    leavesOut: 'As for the voltage: cold magnets bring the speed down by a few per cent.',
    proof: {
      examples: [
        {
          takes: { peak: 100, stated: 1000 * RPM, bus: 450 },
          gives: 4500 * RPM,
          within: 1e-9,
          source: byCircuit('100 V at 1000/min, bus rated 450 V'),
        },
        { takes: { peak: 100, stated: 1000 * RPM, bus: 60 }, gives: 600 * RPM, within: 1e-9, source: byCircuit('100 V at 1000/min, 60 V') },
      ],
    },
  },
  ({ peak, stated, bus }) => (stated * bus) / peak,
)
