import { busEnergy, labelledWait, timeToClassA } from '../../high-voltage/bus-discharge.ts'
import { bleedersTogether, capacitanceTogether, closingVoltage, triesEnergy } from '../../high-voltage/bus-sums.ts'
import { loadedPrecharge, prechargeEnergy, prechargeReaches, prechargeStart } from '../../high-voltage/precharge.ts'
import { isUser } from '../../high-voltage/circuit.ts'
import { prechargeWindow } from '../../high-voltage/contactor-steps.ts'
import { LOW_DC } from '../../high-voltage/voltage-class.ts'
import type { CircuitPart } from '../../model/high-voltage.ts'
import { type Field, type Figure, type Gap, isGap, standard, type Value } from '../../working/value.ts'
import { packModel } from '../pack/pack-model.ts'
import { from, type Gaps, isGaps, maybe, study } from '../study.ts'
import { circuit, partsOf } from './circuit.ts'

export type BusAnswer = {
  readonly capacitance: Figure
  readonly energy: Figure
  /** Until the bus is down by its bleeders alone; without any it never is. */
  readonly down: Figure | 'never'
  readonly low: Value
  /** Null where no resistor lies beside a main contactor. */
  readonly precharge:
    | { readonly time: Figure; readonly threshold: Figure; readonly timeout: Figure; readonly tries: Figure }
    | { readonly stalls: Figure }
    | Gaps
    | null
  readonly resistor: string | null
}
const NO_USER: Gap = { gap: true, path: 'high-voltage.parts', label: 'parts on the bus: inverter, charger, DC-DC', until: 'any time' }
/** Nothing draws while it fills. */
const NO_LOAD = standard('precharge.no-load', 'nothing drawn while the bus fills', 'R_L', 1e9, 'Ω', {
  work: 'definition',
  place: 'as good as an open circuit',
})
type OnBus = Extract<CircuitPart, { readonly capacitance: unknown }>
const onBus = (p: CircuitPart): p is OnBus => isUser({ kind: p.kind }) && p.kind !== 'DC inlet'

/** What the bus stores, how fast the precharge fills it, and how fast it empties by itself. */
export const bus = study({
  id: 'bus',
  stage: 'high voltage',
  asks: 'What does the bus store, how is it filled, and how does it empty?',
  reads: (m, ask) => {
    const parts = partsOf(m),
      users = parts.map(([, p]) => p).filter(onBus)
    return {
      full: from(ask(packModel), p => p.highestVoltage),
      capacitances: users.length > 0 ? users.map(p => p.capacitance) : NO_USER,
      // A bleeder nobody knows of empties nothing.
      bleeders: users.map(p => p.bleeder).filter((b): b is Exclude<Field, Gap> => !isGap(b)),
      resistor: from(ask(circuit), c => c.precharge?.resistor ?? null),
      resistors: parts.flatMap(([name, p]) => (p.kind === 'precharge resistor' ? [{ name, is: maybe(p.resistance) }] : [])),
    }
  },
  answer: ({ full, capacitances, bleeders, resistor, resistors }, make): BusAnswer => {
    const each = capacitances as readonly Value[],
      voltage = full as Value,
      capacitance = make.work('capacitance', capacitanceTogether, { each }, { label: 'Capacitance of the bus' }),
      bleeding = bleeders as readonly Value[]
    const empties =
      bleeding.length === 0
        ? undefined
        : make.work('bleeder', bleedersTogether, { each: bleeding }, { label: 'Bleeders of the bus together' })
    const down =
      empties &&
      make.work(
        'down',
        timeToClassA,
        { start: voltage, resistor: empties, capacitance },
        { label: 'Until the bus is down to 60 V by itself' },
      )
    if (down) make.work('label', labelledWait, { time: down }, { label: 'Wait written on the label' })
    return {
      capacitance,
      energy: make.work('energy', busEnergy, { voltage, capacitance }, { label: 'Energy in the bus, pack full' }),
      down: down ?? 'never',
      low: LOW_DC,
      precharge: filled(),
      resistor: resistor as string | null,
    }
    function filled(): BusAnswer['precharge'] {
      const found = resistors.find(r => r.name === (resistor as string | null))?.is as Value | Gaps | undefined
      if (found === undefined) return null
      if (isGaps(found)) return found
      make.all(
        'start',
        prechargeStart,
        { pack: voltage, resistor: found },
        { labels: { current: 'First current of the precharge', power: 'First power in the precharge resistor' } },
      )
      const { final, constant } = make.all(
        'precharge',
        loadedPrecharge,
        { pack: voltage, resistor: found, load: empties ?? NO_LOAD, capacitance },
        { labels: { final: 'Voltage the precharge comes to', constant: 'Time constant of the precharge' } },
      ).figures
      const threshold = make.work('threshold', closingVoltage, { full: voltage })
      // The bleeders draw so much that it never comes so far.
      if (final.value <= threshold.value) return { stalls: final }
      const time = make.work('time', prechargeReaches, { threshold, final, constant }, { label: 'Time the precharge takes' })
      const energy = make.work(
        'resistor',
        prechargeEnergy,
        { pack: voltage, capacitance, resistor: found, time },
        { label: 'Energy the precharge resistor takes up' },
      )
      const { timeout } = make.all(
        'window',
        prechargeWindow,
        { design: time },
        { labels: { soonest: 'Too fast a precharge: capacitors are missing', timeout: 'Precharge given up after' } },
      ).figures
      return {
        time,
        threshold,
        timeout,
        tries: make.work('tries', triesEnergy, { energy }, { label: 'Energy the precharge resistor takes up in all tries in a row' }),
      }
    }
  },
})
