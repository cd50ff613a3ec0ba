import type { Conditions } from '../../model/brief.ts'
import type { Model } from '../../model/model.ts'
import { airDensity } from '../../vehicle/air-density.ts'
import {
  airDrag,
  constantPartOnTheDay,
  DRY_ASPHALT,
  linearPartOnTheDay,
  NO_LINEAR_PART,
  rollingForce,
  rollingForceWithTrailer,
  rollingOnTheDay,
  rollingShare,
  squaredPartOnTheDay,
  trainMass,
  wheelsInertia,
} from '../../vehicle/road-load.ts'
import { type Field, type Figure, type Gap, isGap, type Value } from '../../working/value.ts'
import { type Ask, from, isGaps, type Known, type Maker } from '../study.ts'
import { coastDown } from './coast-down.ts'
import { dragArea, dragAreaOf } from './drag-area.ts'
import { loadCases } from './load-cases.ts'
import { rolling } from './rolling.ts'
import type { Situation } from './situation-figures.ts'
import { stance } from './stance.ts'

const missing = (path: string, label: string): Gap => ({ gap: true, path, label, until: 'any time', why: 'missing' })

/** Everything the car on the road is worked out from, under the given conditions; gaps stand inside. The trailer of the load case counts where the conditions name none. */
export function situationReads(m: Model, ask: Ask, conditions: Conditions) {
  const { donor } = m,
    { load, surface } = conditions
  return {
    laden: isGap(load)
      ? load
      : from(ask(loadCases), l => l.cases[load.value] ?? missing(`brief.loads.${load.value}`, `load case ${load.value}`)),
    trailer: trailerOf(m, conditions),
    road: roadReads(m, ask),
    factor: isGap(surface) ? surface : surface.value === 'dry' ? DRY_ASPHALT : donor.rollingFactor[surface.value],
    grip: isGap(surface) ? surface : donor.grip[surface.value],
    temperature: conditions.temperature,
    altitude: conditions.altitude,
    headWind: conditions.headWind,
    height: heightOf(m, ask),
    wheelbase: donor.wheelbase,
    radius: from(ask(rolling), r => r.radius),
    wheel: donor.wheelInertia,
  }
}

/** By the ledger where every part has a height; until then as the donor car had it. */
export function heightOf(m: Model, ask: Ask): Value | Field {
  const height = from(ask(stance), s => s.height)
  return isGaps(height) ? m.donor.centreHeight : height.now
}

/** Coefficients of a coast-down govern where there are any; else drag area and rolling resistance. */
function roadReads(m: Model, ask: Ask) {
  const { donor } = m,
    measured = ask(coastDown)
  return isGaps(measured)
    ? { by: 'drag area' as const, area: dragAreaOf(donor), rolling: donor.rollingResistance }
    : { by: 'coast-down' as const, measured }
}

function trailerOf(
  m: Model,
  { load, trailer }: Conditions,
): null | Gap | { readonly mass: Field; readonly nose: Field; readonly area: Field; readonly rolling: Field } {
  const ofLoad = isGap(load) ? undefined : m.brief.loads[load.value]?.trailer
  const loaded = ofLoad === undefined || isGap(ofLoad) ? undefined : ofLoad.value,
    named = isGap(trailer) ? loaded : trailer.value
  if (named === undefined) return null
  // The nose load is part of the load case: a trailer it does not name would pull without pressing on the coupling.
  if (loaded !== named) return missing(isGap(load) ? load.path : `brief.loads.${load.value}.trailer`, `trailer ${named} in the load case`)
  const t = m.trips.trailers[named]
  return t
    ? { mass: t.mass, nose: t.noseLoad, area: t.dragArea, rolling: t.rollingResistance }
    : missing(`trips.trailers.${named}`, `trailer ${named}`)
}

export type SituationKnown = Known<ReturnType<typeof situationReads>>

/** The same as far as it matters at walking pace: no air, nothing that gathers speed. */
export function standingReads(m: Model, ask: Ask, conditions: Conditions) {
  const { laden, trailer, road, factor, grip, temperature, height, wheelbase, radius } = situationReads(m, ask, conditions)
  return {
    laden,
    road: road.by === 'drag area' ? { by: road.by, rolling: road.rolling } : road,
    trailer:
      trailer === null || isGap(trailer)
        ? trailer
        : { mass: trailer.mass, nose: trailer.nose, rolling: trailer.rolling, coupling: m.donor.towing.couplingHeight },
    factor,
    grip,
    temperature,
    height,
    wheelbase,
    radius,
  }
}
export type StandingKnown = Known<ReturnType<typeof standingReads>>
/** The car at walking pace: what moves, and what rolls it resists with on this surface. */
export function standing(make: Maker, known: StandingKnown, item: string): Pick<Situation, 'mass' | 'rolling'> {
  const named = namedFor(item),
    mass = massOf(make, known, named),
    f0 = constantPart(make, known, named)
  return { mass, rolling: make.work('rolling', rollingShare, { f0, mass }, named('Rolling resistance over weight')) }
}

/** The car on the road: makes its figures inside the calling study, told apart by `item`. */
export function situation(make: Maker, known: SituationKnown, item: string): Situation {
  const { laden, temperature, altitude } = known
  const named = namedFor(item)
  const density = make.work('density', airDensity, { altitude, temperature }, named('Air density'))
  const mass = massOf(make, known, named),
    f0 = constantPart(make, known, named),
    parts = airParts(make, known, density, named)
  return {
    carMass: laden.mass,
    mass,
    front: laden.front,
    rear: laden.rear,
    f0,
    f1: parts.f1,
    f2: parts.f2,
    rolling: make.work('rolling', rollingShare, { f0, mass }, named('Rolling resistance over weight')),
    headWind: known.headWind,
    density,
    temperature,
    grip: known.grip,
    height: known.height,
    wheelbase: known.wheelbase,
    radius: known.radius,
    wheelsInertia: make.work('wheels-inertia', wheelsInertia, { one: known.wheel }, named('Inertia of all wheels')),
  }
}

type Named = (label: string) => { item: string; label: string }
const namedFor =
  (item: string): Named =>
  label => ({ item, label: `${label}, ${item}` })
const massOf = (make: Maker, { laden, trailer }: StandingKnown | SituationKnown, named: Named): Figure =>
  trailer
    ? make.work('train-mass', trainMass, { car: laden.mass, trailer: trailer.mass, nose: trailer.nose }, named('Mass of car and trailer'))
    : laden.mass
/** Rolling resistance on this surface and day, of the trailer too. */
function constantPart(make: Maker, { road, laden, trailer, temperature, factor }: StandingKnown | SituationKnown, named: Named): Figure {
  const key = trailer ? 'f0-car' : 'f0',
    label = named(trailer ? 'Constant part of road load, car alone' : 'Constant part of road load')
  let alone: Figure
  if (road.by === 'drag area') {
    const rolling = make.work(
      'rolling-on-the-day',
      rollingOnTheDay,
      { rolling: road.rolling, surface: factor, temperature },
      named('Rolling resistance on the day'),
    )
    alone = make.work(key, rollingForce, { rolling, mass: laden.mass }, label)
  } else {
    const c = road.measured
    alone = make.work(
      key,
      constantPartOnTheDay,
      { f0: c.f0, mass: laden.mass, tested: c.mass, surface: factor, temperature, stated: c.temperature },
      label,
    )
  }
  return trailer
    ? make.work(
        'f0',
        rollingForceWithTrailer,
        { alone, rolling: trailer.rolling, trailer: trailer.mass, nose: trailer.nose },
        named('Constant part of road load'),
      )
    : alone
}
function airParts(make: Maker, { road, trailer, temperature }: SituationKnown, density: Value, named: Named): { f1: Value; f2: Value } {
  const f2Label = named('Air drag per speed squared')
  if (road.by === 'drag area') {
    const area = dragArea(make, road.area, named('Drag area'))
    return {
      f1: NO_LINEAR_PART,
      f2: make.work('f2', airDrag, { density, areas: trailer ? [area, trailer.area] : [area] }, f2Label),
    }
  }
  const c = road.measured
  return {
    f1: make.work('f1', linearPartOnTheDay, { f1: c.f1, temperature, stated: c.temperature }, named('Part of road load rising with speed')),
    f2: make.work('f2', squaredPartOnTheDay, { f2: c.f2, density, stated: c.density, extra: trailer ? [trailer.area] : [] }, f2Label),
  }
}
