import { agedResistance, CLASS_HEALTH, RESISTANCE_RISE } from '../../battery/ageing-of-resistance.ts'
import { chargeShare, heldChargeShare } from '../../battery/charge-acceptance.ts'
import { coldFactor } from '../../battery/cold-resistance.ts'
import { lampTestResistance } from '../../battery/lamp-test.ts'
import { healthOf } from '../../battery/module-lot.ts'
import * as sum from '../../battery/pack-arithmetic.ts'
import * as ohms from '../../battery/pack-resistance.ts'
import { cellsOfTwoForms, massOfTwoForms, resistanceOfTwoForms } from '../../battery/two-forms.ts'
import { lesserCurrent } from '../../battery/pack-sums.ts'
import type { Model } from '../../model/model.ts'
import { at, type Curve, curve } from '../../numerics/curve.ts'
import { type Figure, isGap, type Value } from '../../working/value.ts'
import { isGaps, type Known, type Maker, maybe, study } from '../study.ts'
import { bmsLimits, NO_LOWER } from './bms-limits.ts'
import type { PackFigures } from './pack-figures.ts'
import { othersInStrings } from './other-module.ts'
import { isOther, missingRecords, recordsInPack, tested } from './salvaged-modules.ts'

/** From 233.15 to 343.15 K in steps of one kelvin: −40 to 70 °C, with 25 °C on a step. */
const TEMPERATURES = Float64Array.from({ length: 111 }, (_, i) => 233.15 + i)
/** Width of a step in a curve over temperature [K]. */
const STEP = 0.01
const over = (x: Float64Array, f: (x: number) => number): Curve => curve(x, x.map(f))
const colder = (coefficient: number): Curve => over(TEMPERATURES, temperature => coldFactor({ coefficient, temperature }))
type Taking = { readonly rate: Curve; readonly capacity: number; readonly most: number }
const taken = (x: Taking): Curve => over(TEMPERATURES, temperature => chargeShare({ ...x, temperature }))

/** Whether the class resistance is to follow the health of the cells: a resistance stated for these very cells already does, and a law is known for NMC alone. */
const agesByLaw = ({ dropAtHourRate: drop, chemistry }: Model['pack']['module']): boolean =>
  !isGap(drop) && drop.origin?.how === 'assumed' && !isGap(chemistry) && chemistry.value === 'NMC'

const reads = (m: Model) => {
  const { pack } = m,
    { module: c, lampTest } = pack,
    others = othersInStrings(m),
    records = recordsInPack(pack)
  const slow = { share: c.branchShare, time: c.branchTime, coefficient: c.coldCoefficient, shape: c.resistanceOverCharge }
  const { at: _, given, ...lamp } = lampTest
  return {
    modulesInSeries: pack.modulesInSeries,
    strings: pack.strings,
    series: c.cellsInSeries,
    parallel: c.cellsInParallel,
    others,
    cellCapacity: c.cellCapacity,
    // A typed resistance first, then a lamp test, then the class of the chemistry.
    cell: isGap(c.cellResistance) ? (given ? { lamp } : { drop: c.dropAtHourRate, aged: agesByLaw(c) }) : c.cellResistance,
    slow,
    openCircuit: c.openCircuit,
    wiring: pack.wiringResistance,
    // Needed only where a module has not been measured.
    health: records.length > 0 && missingRecords(pack) === null && records.every(([, r]) => !isGap(r.capacity)) ? null : c.health,
    capacities: tested(records, 'capacity'),
    resistances: tested(
      records.filter(([, r]) => !isOther(r)),
      'resistance',
    ),
    otherResistances: tested(
      records.filter(([, r]) => isOther(r)),
      'resistance',
    ),
    lowest: pack.cellLowest,
    highest: pack.cellHighest,
    peak: c.peakCurrent,
    continuous: c.continuousCurrent,
    charging: c.chargeCurrent,
    chargeTable: maybe(c.chargeTable),
    coldEnergy: maybe(c.coldEnergy),
    mass: c.mass,
    conductance: pack.boxConductance,
    set: bmsLimits(pack).drive,
  }
}
type Read = Known<ReturnType<typeof reads>>

/** What one module is taken to hold and to lose: measured, untested against the rest, or as stated for all. */
function capacityOfString(k: Read, make: Maker): Figure {
  const stated =
    k.health === null
      ? undefined
      : make.work(
          'module-capacity',
          sum.moduleCapacity,
          { parallel: k.parallel, cell: k.cellCapacity, health: k.health },
          { label: 'Capacity of a module as stated' },
        )
  const wanted = (k.modulesInSeries.value + (k.others?.inSeries.value ?? 0)) * k.strings.value
  const each = k.capacities.map(t =>
    'measured' in t
      ? t.measured
      : make.work(
          'untested-capacity',
          sum.untestedCapacity,
          { stated: stated as Figure, against: t.against },
          { item: t.name, label: `Capacity of untested module ${t.name}` },
        ),
  )
  const modules: readonly Value[] = stated && each.length < wanted ? [...each, stated] : each
  return make.work('weakest', sum.weakestModule, { modules }, { label: 'Capacity of the weakest module' })
}

function resistanceOfCell(k: Read, make: Maker, weakest: Figure): Value {
  if ('lamp' in k.cell)
    return make.work(
      'cell-resistance',
      lampTestResistance,
      {
        ...k.cell.lamp,
        series: k.series,
        parallel: k.parallel,
        coefficient: k.slow.coefficient,
        share: k.slow.share,
        branch: k.slow.time,
        shape: k.slow.shape,
      },
      { label: 'Resistance of one cell, lamp-load test' },
    )
  if (!('drop' in k.cell)) return k.cell
  const { drop, aged } = k.cell
  const cell = make.work(
    aged ? 'class-resistance' : 'cell-resistance',
    ohms.cellResistance,
    { drop, capacity: k.cellCapacity },
    { label: 'Resistance of one cell, class' },
  )
  if (!aged) return cell
  const health =
    k.health ??
    make.work(
      'health',
      healthOf,
      { capacity: weakest, parallel: k.parallel, cell: k.cellCapacity },
      { label: 'Health of the weakest module' },
    )
  return make.work(
    'cell-resistance',
    agedResistance,
    { cell, rise: RESISTANCE_RISE, classHealth: CLASS_HEALTH, health },
    { label: 'Resistance of one cell, class at its health' },
  )
}

function resistanceOfCells(k: Read, make: Maker, weakest: Figure): Figure {
  const label = 'Resistance of all cells, 10 s, 25 °C',
    all = [
      { tested: k.resistances, inSeries: k.modulesInSeries, cells: k.series, key: 'module-resistance', named: undefined },
      ...(k.others
        ? [
            {
              tested: k.otherResistances,
              inSeries: k.others.inSeries,
              cells: k.others.cells,
              key: 'other-resistance',
              named: { label: 'Resistance of a module of the other form' },
            },
          ]
        : []),
    ]
  const forms = all.map(f => ({ ...f, wanted: f.inSeries.value * k.strings.value })),
    complete = forms.every(f => f.tested.length >= f.wanted && f.tested.every(t => 'measured' in t)),
    cell = complete ? undefined : resistanceOfCell(k, make, weakest)
  const stated = forms.map(f =>
      cell === undefined ? undefined : make.work(f.key, ohms.moduleResistance, { cell, series: f.cells, parallel: k.parallel }, f.named),
    ),
    [module, other] = stated as [Figure, Figure | undefined]
  if (forms.every(f => f.tested.length === 0))
    return k.others
      ? make.work(
          'cells',
          resistanceOfTwoForms,
          { modules: k.modulesInSeries, module, others: k.others.inSeries, other: other as Figure, strings: k.strings },
          { label },
        )
      : make.work('cells', ohms.alikeResistance, { module, modules: k.modulesInSeries, strings: k.strings }, { label })
  const modules = forms.flatMap((f, i): readonly Value[] => {
    const each = f.tested
      .slice(0, f.wanted)
      .map(t =>
        'measured' in t
          ? t.measured
          : make.work(
              'untested-resistance',
              ohms.untestedResistance,
              { stated: stated[i] as Figure, against: t.against },
              { item: t.name, label: `Resistance of untested module ${t.name}` },
            ),
      )
    const rest = Array.from({ length: Math.max(0, Math.round(f.wanted) - each.length) }, () => stated[i] as Figure)
    return [...each, ...rest]
  })
  return make.work('cells', ohms.modulesResistance, { modules, strings: k.strings }, { label })
}

/** What the cells allow, held to what the BMS is set to where the file says. */
function heldByBms({ set }: Read, make: Maker, cells: PackFigures['held']): PackFigures['held'] {
  const lesser = (key: string, label: string, one: Figure, other: Value | null): Figure =>
    other === null ? one : make.work(key, lesserCurrent, { one, other }, { label })
  const charge = lesser('held-charge', 'Recovery current cells and BMS allow, warm', cells.charge, set.into)
  if (set.into === null && set.lowest === null) return { ...cells, ...pulls() }
  if (isGaps(cells.chargeShare)) return { ...cells, ...pulls(), charge }
  const lowest = set.lowest ?? NO_LOWER,
    known = cells.chargeShare.value
  const numbers = { share: known, cells: cells.charge.value, held: charge.value, lowest: lowest.value }
  const held = (x: typeof numbers): Curve => over(withStep(x.lowest), temperature => heldChargeShare({ ...x, temperature }))
  return {
    ...pulls(),
    charge,
    chargeShare: make.derive(
      'held-share',
      heldChargeShare,
      { share: cells.chargeShare, cells: cells.charge, held: charge, lowest },
      held(numbers),
      '1',
      { label: 'Share of the recovery current over cell temperature', rebuild: x => held(x as typeof numbers) },
    ),
  }
  function pulls(): { peak: Figure; continuous: Figure } {
    return {
      peak: lesser('held-peak', 'Peak current cells and BMS allow', cells.peak, set.pull),
      continuous: lesser('held-continuous', 'Continuous current cells and BMS allow', cells.continuous, set.pull),
    }
  }
}
/** The temperatures of the tables with a step at one of them: nothing below it. */
function withStep(at: number): Float64Array {
  const more = [at - STEP, at].filter(t => t > (TEMPERATURES[0] as number) && t < (TEMPERATURES[TEMPERATURES.length - 1] as number))
  return Float64Array.from([...TEMPERATURES.filter(t => more.every(m => Math.abs(m - t) > STEP / 2)), ...more]).sort()
}

/** The pack from its cells: counts, capacity by the weakest module, voltage and resistance over charge, the cold, what the cells allow. */
export const packModel = study({
  id: 'pack',
  stage: 'pack',
  asks: 'What does the pack hold, lose and allow?',
  reads,
  answer: (k, make): PackFigures => {
    const cellsInSeries = k.others
      ? make.work(
          'cells-in-series',
          cellsOfTwoForms,
          { modules: k.modulesInSeries, cells: k.series, others: k.others.inSeries, otherCells: k.others.cells },
          { label: 'Cells in series', symbol: 'n_s' },
        )
      : make.work(
          'cells-in-series',
          sum.cellCount,
          { modules: k.modulesInSeries, cells: k.series },
          { label: 'Cells in series', symbol: 'n_s' },
        )
    const cellsInParallel = make.work(
      'cells-in-parallel',
      sum.cellCount,
      { modules: k.strings, cells: k.parallel },
      { label: 'Cells in parallel', symbol: 'n_p' },
    )
    const weakest = capacityOfString(k, make)
    const capacity = make.work(
      'capacity',
      sum.packCapacity,
      { strings: k.strings, string: weakest },
      { label: 'Capacity of the pack, 25 °C' },
    )

    const tenSeconds = resistanceOfCells(k, make, weakest)
    const ohmic = make.work('ohmic', ohms.ohmicResistance, { tenSeconds, share: k.slow.share, time: k.slow.time })
    const shape = k.slow.shape.value,
      points = Float64Array.from(new Set([...shape.x, 0, 0.5, 1].filter(z => z >= 0 && z <= 1))).sort()
    const resistance = make.derive(
      'resistance',
      ohms.packResistance,
      { cells: ohmic, shape: k.slow.shape, wiring: k.wiring },
      over(points, charge => ohms.packResistance({ cells: ohmic.value, shape, wiring: k.wiring.value, charge })),
      'Ω',
      { label: 'Ohmic resistance of the pack over charge, 25 °C' },
    )
    const openCircuit = make.derive(
      'open-circuit',
      sum.packOpenCircuit,
      { cells: cellsInSeries, cell: k.openCircuit },
      over(k.openCircuit.value.x, z => cellsInSeries.value * at(k.openCircuit.value, z)),
      'V',
      { label: 'Open-circuit voltage of the pack over charge' },
    )
    const cold = make.derive('cold-factor', coldFactor, { coefficient: k.slow.coefficient }, colder(k.slow.coefficient.value), '1', {
      label: 'Resistance over cell temperature',
      rebuild: x => colder(x['coefficient'] as number),
    })

    const chargeCurrent = make.work(
      'charge-current',
      sum.stringsCurrent,
      { strings: k.strings, each: k.charging },
      { label: 'Charging current the cells allow, warm' },
    )
    const table = k.chargeTable
    const share = isGaps(table)
      ? table
      : make.derive(
          'charge-share',
          chargeShare,
          { rate: table, capacity, most: chargeCurrent },
          taken({ rate: table.value, capacity: capacity.value, most: chargeCurrent.value }),
          '1',
          { label: 'Share of the charging current over cell temperature', rebuild: x => taken(x as Taking) },
        )
    const peakCurrent = make.work(
      'peak-current',
      sum.stringsCurrent,
      { strings: k.strings, each: k.peak },
      { label: 'Peak current the cells allow' },
    )
    const continuousCurrent = make.work(
      'continuous-current',
      sum.stringsCurrent,
      { strings: k.strings, each: k.continuous },
      { label: 'Continuous current the cells allow' },
    )
    const held = heldByBms(k, make, { peak: peakCurrent, continuous: continuousCurrent, charge: chargeCurrent, chargeShare: share })
    const mass = k.others
      ? make.work('mass', massOfTwoForms, {
          modules: k.modulesInSeries,
          each: k.mass,
          others: k.others.inSeries,
          otherEach: k.others.mass,
          strings: k.strings,
        })
      : make.work('mass', sum.modulesMass, { series: k.modulesInSeries, strings: k.strings, each: k.mass })
    return {
      cellsInSeries,
      cellsInParallel,
      groups: make.work(
        'groups',
        sum.cellCount,
        { modules: k.strings, cells: cellsInSeries },
        { label: 'Cell groups to watch, string by string', symbol: 'n' },
      ),
      openCircuit,
      resistance,
      cells: ohmic,
      resistanceFactor: make.work('resistance-factor', ohms.resistanceFactor, { cells: ohmic, wiring: k.wiring, curve: resistance }),
      branchResistance: make.work('branch-resistance', ohms.branchResistance, { tenSeconds, share: k.slow.share }),
      branchTime: k.slow.time,
      coldFactor: cold,
      capacity,
      weakest,
      lowestVoltage: make.work(
        'lowest',
        sum.seriesVoltage,
        { cells: cellsInSeries, each: k.lowest },
        { label: 'Pack voltage, every cell at its lowest', symbol: 'U_min' },
      ),
      highestVoltage: make.work(
        'highest',
        sum.seriesVoltage,
        { cells: cellsInSeries, each: k.highest },
        { label: 'Pack voltage, every cell full', symbol: 'U_max' },
      ),
      peakCurrent,
      continuousCurrent,
      chargeCurrent,
      chargeShare: share,
      held,
      coldEnergy: k.coldEnergy,
      heatCapacity: make.work('heat-capacity', sum.packHeatCapacity, { mass, specific: sum.SPECIFIC_HEAT }),
      conductance: k.conductance,
      mass,
    }
  },
})
