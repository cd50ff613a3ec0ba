import type { Donor } from '../../model/donor.ts'
import { airDensityRead } from '../../vehicle/air-density.ts'
import { coastDownFit, stepDifference, stepForce, toReferenceConditions, windAndSlope } from '../../vehicle/coast-down.ts'
import { wheelsInertia } from '../../vehicle/road-load.ts'
import { REFERENCE_DENSITY, TWENTY } from '../../vehicle/road-load-reference.ts'
import { coastingMass, coastingMassByShare } from '../../vehicle/rotating-inertia.ts'
import { type Fact, type Figure, type Gap, isGap, type Value } from '../../working/value.ts'
import { type Ask, from, isGaps, type Known, type Maker, study } from '../study.ts'
import { coastDownRuns, runsOf } from './coast-down-runs.ts'
import { rolling } from './rolling.ts'

/** Road-load coefficients with the state they hold at. */
export type CoastDown = {
  readonly by: 'runs' | 'coefficients'
  readonly f0: Value
  readonly f1: Value
  readonly f2: Value
  readonly mass: Value
  readonly temperature: Value
  readonly density: Value
  /** Statistical accuracy of each step; none where coefficients were typed. */
  readonly accuracy: Readonly<Record<string, Figure>>
}

const COAST = {
  tool: 'GPS logger, still dry day, level straight road, 110 to 20 km/h in neutral, both directions',
  accuracy: '± 5 % on road load',
  minutes: 120,
}
const noRuns: Gap = {
  gap: true,
  path: 'donor.coast-down.steps',
  label: 'coast-down runs',
  until: 'before the engine comes out',
  measure: COAST,
  why: 'missing',
}
const tooFew: Gap = { ...noRuns, label: 'coast-down runs through at least three steps of speed' }

function runReads(donor: Donor, ask: Ask) {
  const { coastDown: c } = donor,
    names = Object.keys(c.steps)
  return {
    by: 'runs' as const,
    names,
    enough: names.length < 3 ? tooFew : null,
    mass: c.mass,
    temperature: c.temperature,
    pressure: c.pressure,
    // The turning wheels by their own inertia; where no class of wheel is known, by the share of the test procedure.
    wheel: isGap(donor.wheelInertia) ? null : { inertia: donor.wheelInertia, radius: from(ask(rolling), r => r.radius) },
    // It always answers, step by step; what a step lacks is asked for beside.
    runs: from(ask(coastDownRuns), r => r),
    steps: runsOf(donor),
  }
}

/** Road-load coefficients of the donor car, from its coast-down runs or as somebody published them. */
export const coastDown = study({
  id: 'coast-down',
  stage: 'donor',
  asks: 'What holds the car back, by its own coast-down?',
  reads: ({ donor }, ask) => {
    const c = donor.coastDown
    if (Object.keys(c.steps).length > 0) return runReads(donor, ask)
    const typed = [c.f0, c.f1, c.f2].some(f => !isGap(f))
    return typed
      ? { by: 'coefficients' as const, f0: c.f0, f1: c.f1, f2: c.f2, mass: c.mass, temperature: c.temperature, pressure: c.pressure }
      : noRuns
  },
  answer: (known, make): CoastDown => (known.by === 'runs' ? byRuns(known, make) : byCoefficients(known, make)),
})

type Typed = {
  readonly f0: Value
  readonly f1: Value
  readonly f2: Value
  readonly mass: Value
  readonly temperature: Value
  readonly pressure: Value
}
function byCoefficients({ f0, f1, f2, mass, temperature, pressure }: Typed, make: Maker): CoastDown {
  const density = make.work('density', airDensityRead, { pressure, temperature }, { label: 'Air density the coefficients hold at' })
  return { by: 'coefficients', f0, f1, f2, mass, temperature, density, accuracy: {} }
}

function byRuns(known: Known<ReturnType<typeof runReads>>, make: Maker): CoastDown {
  const { names, steps, wheel, temperature, pressure } = known
  const mass = wheel
    ? make.work('coasting-mass', coastingMass, {
        mass: known.mass,
        wheels: make.work('wheels-inertia', wheelsInertia, { one: wheel.inertia }),
        radius: wheel.radius,
      })
    : make.work('coasting-mass', coastingMassByShare, { mass: known.mass })
  const forces: Figure[] = [],
    differences: Figure[] = [],
    accuracy: Record<string, Figure> = {}
  for (const [i, step] of steps.entries()) {
    const item = names[i] as string,
      out = step.pairs.map(p => p.out),
      back = step.pairs.map(p => p.back)
    const run = known.runs.steps[item]
    if (!run || isGaps(run)) throw new RangeError(`coast-down: step ${item} has its times and no accuracy`)
    const p = run.accuracy
    accuracy[item] = p
    const passes = { mass, from: step.from, to: step.to, out, back }
    forces.push(
      make.work('force', stepForce, { ...passes, scatter: scatter(item, out.length, p) }, { item, label: `Coast-down force, ${item}` }),
    )
    differences.push(make.work('difference', stepDifference, passes, { item, label: `Out less back, ${item}` }))
  }
  const froms = steps.map(s => s.from),
    tos = steps.map(s => s.to)
  const raw = make.all('as-run', coastDownFit, { from: froms, to: tos, forces }).figures
  const wind = make.work('wind', windAndSlope, { from: froms, to: tos, differences, f2: raw.f2 })
  const labels = {
    f0: 'Constant part of road load, 20 °C',
    f1: 'Part of road load rising with speed, 20 °C',
    f2: 'Part of road load rising with speed squared, 20 °C and 100 kPa',
  }
  const at = make.all('', toReferenceConditions, { ...raw, wind, temperature, pressure }, { labels }).figures
  make.table('steps', {
    label: 'Coast-down, step by step',
    columns: [
      { key: 'from', label: 'from', unit: 'm/s', shows: 'speed' },
      { key: 'to', label: 'to', unit: 'm/s', shows: 'speed' },
      { key: 'force', label: 'force', unit: 'N' },
      { key: 'accuracy', label: 'accuracy', unit: '1', shows: 'share' },
    ],
    rows: steps.map((s, i) => ({
      name: names[i] as string,
      cells: { from: s.from, to: s.to, force: forces[i], accuracy: accuracy[names[i] as string] },
    })),
  })
  return {
    by: 'runs',
    ...at,
    mass: known.mass,
    temperature: TWENTY,
    density: REFERENCE_DENSITY,
    accuracy,
  }
}

/** The runs scatter about their mean: nothing in the best value, but the half-width of the mean goes into every band. */
const scatter = (item: string, pairs: number, p: Figure): Fact => ({
  path: `donor.coast-down.steps.${item}#scatter`,
  label: `Scatter of the mean, ${item}`,
  symbol: 'ε',
  unit: '1',
  shows: 'share',
  value: 0,
  half: p.value,
  origin: { how: 'measured', note: `${pairs} pairs of runs` },
})
