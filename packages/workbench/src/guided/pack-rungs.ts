import { type Part, partClasses } from '@ampwright/catalogue'
import { classFigure, classHalf, inOrder } from './class-figures.ts'
import { NICKEL } from './planned.ts'

/** One way to build a pack from modules of a class: so many in series, so many strings. */
export type PackRung = {
  readonly part: Part
  readonly inSeries: number
  readonly strings: number
  readonly modules: number
  /** Cells in series. */
  readonly cells: number
  /** Charge of one module when new [C]. */
  readonly charge: number
  /** Bare modules [kg]. */
  readonly mass: number
  /** Cells times charge times health: orders packs by the energy they hold. */
  readonly holds: number
}
const MOST_STRINGS = 2
const most = (by: string, ...classes: readonly string[]): number =>
  Math.max(...inOrder(by, ...classes).map(p => classFigure(p, by) as number))
const lowestOf = (by: string, ...classes: readonly string[]): number =>
  Math.min(...inOrder(by, ...classes).map(p => classFigure(p, by) as number))

/** Direct voltage above which a module is high voltage by itself. */
const HIGH_VOLTAGE = 60
/** Window every part on pack voltage of the 400 V class shares, and the cells a BMS of the class watches. */
export function window400(): { readonly floor: number; readonly ceiling: number; readonly cells: number } {
  const inverters = inOrder('lowest-voltage', 'inverter-400v')
  return {
    floor: Math.max(
      most('lowest-voltage', 'charger', 'dc-dc', 'coolant-heater'),
      ...inverters.map(p => (classFigure(p, 'lowest-voltage') as number) + classHalf(p, 'lowest-voltage')),
    ),
    ceiling: lowestOf('highest-voltage', 'charger', 'dc-dc', 'coolant-heater'),
    cells: most('cells', 'bms'),
  }
}

/**
 * Packs of salvaged nickel modules that suit the 400 V class, least energy first; one that weighs more and holds no more than another is left out.
 *
 * Modules that are high voltage by themselves are left out: the trade keeps off them. Single cells are left out: the catalogue has no price of them, so no cost band could be told.
 */
export function packRungs(): readonly PackRung[] {
  const all = partClasses
    .filter(c => c.fills === 'module')
    .flatMap(c => c.parts)
    .flatMap(rungsOf)
    .sort((a, b) => a.holds - b.holds || a.mass - b.mass)
  return all.filter(r => !all.some(other => other !== r && other.holds >= r.holds && other.mass < r.mass))
}

function rungsOf(part: Part): readonly PackRung[] {
  const chemistry = part.fields['chemistry']?.text,
    series = classFigure(part, 'cells-in-series'),
    parallel = classFigure(part, 'cells-in-parallel')
  const capacity = classFigure(part, 'cell-capacity'),
    mass = classFigure(part, 'mass'),
    health = classFigure(part, 'health')
  if (!part.price || (chemistry !== 'NMC' && chemistry !== 'NCA') || !series || !parallel || !capacity || !mass || !health) return []
  if (series * NICKEL.highest > HIGH_VOLTAGE) return []
  const { floor, ceiling, cells } = window400(),
    inSeries = Math.floor(Math.min(ceiling / NICKEL.highest, cells) / series + 1e-9)
  if (inSeries < 1 || inSeries * series * NICKEL.lowest < floor) return []
  return Array.from({ length: MOST_STRINGS }, (_, i): PackRung => {
    const strings = i + 1,
      modules = inSeries * strings
    return {
      part,
      inSeries,
      strings,
      modules,
      cells: inSeries * series,
      charge: capacity * parallel,
      mass: modules * mass,
      holds: modules * series * parallel * capacity * health,
    }
  })
}
