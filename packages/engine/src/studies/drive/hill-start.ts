import { steepestStart } from '../../drive/steepest-start.ts'
import { pullTogether, wheelForce } from '../../drive/wheel-force.ts'
import type { Conditions, HillStartGoal } from '../../model/brief.ts'
import type { Model } from '../../model/model.ts'
import { gripAll, gripFront, gripRear, rearShare } from '../../vehicle/grip.ts'
import { lesserSlope, slopeHeld, slopeResistance } from '../../vehicle/hill.ts'
import { trainMass } from '../../vehicle/road-load.ts'
import { gripFixedShare } from '../../vehicle/traction.ts'
import { type Fact, type Figure, isGap, type Value } from '../../working/value.ts'
import { type Laden, loadCases } from '../donor/load-cases.ts'
import { rolling } from '../donor/rolling.ts'
import { type Ask, from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { FRONT, REAR } from './operating-points.ts'
import { condition, type PullingKnown, pulling, pullingReads } from './pulling.ts'

export type HillStart = {
  readonly goal: Fact
  readonly slope: Figure
  readonly byPull: Figure
  readonly byGrip: Figure
  readonly need: Figure
  /** Total ratio, torque and efficiency of each unit, as they stand at this start. */
  readonly units: readonly { readonly name: string; readonly ratio: Value; readonly pull: Figure }[]
  readonly radius: Value
}
const missing = (path: string, label: string): Gaps => ({ gaps: [{ gap: true, path, label, until: 'any time' }] })
export const hillStartGoals = (m: Model): readonly (readonly [string, HillStartGoal])[] =>
  Object.entries(m.brief.goals).filter((g): g is [string, HillStartGoal] => g[1]?.kind === 'hill start')

function reads(m: Model, ask: Ask, goal: HillStartGoal) {
  const common = m.brief.conditions,
    load = condition(goal, common, 'load'),
    surface = condition(goal, common, 'surface')
  return {
    slope: goal.slope,
    laden: isGap(load)
      ? load
      : from(
          ask(loadCases),
          l => (l.cases[load.value] as Laden | Gaps | undefined) ?? missing(`brief.loads.${load.value}`, `load case ${load.value}`),
        ),
    trailer: trailerOf(m, condition(goal, common, 'trailer'), load),
    grip: isGap(surface) ? surface : m.donor.grip[surface.value],
    height: m.donor.centreHeight,
    wheelbase: m.donor.wheelbase,
    rolling: m.donor.rollingResistance,
    radius: from(ask(rolling), r => r.radius),
    pulling: pullingReads(m, ask, { surface, transfer: goal.transfer }),
  }
}
function trailerOf(m: Model, named: Conditions['trailer'], load: Conditions['load']) {
  const ofLoad = isGap(load) ? undefined : m.brief.loads[load.value]?.trailer
  const name = !isGap(named) ? named.value : ofLoad && !isGap(ofLoad) ? ofLoad.value : undefined
  if (name === undefined) return null
  const t = m.trips.trailers[name]
  return t
    ? { mass: t.mass, nose: t.noseLoad, coupling: m.donor.towing.couplingHeight }
    : missing(`trips.trailers.${name}`, `trailer ${name}`)
}

/** Hill starts the brief asks for: the steepest slope by pull and by grip of the axles, and the pull the wanted slope needs. */
export const hillStart = study({
  id: 'hill-start',
  stage: 'drive',
  asks: 'Does it pull away on the steepest hill wanted?',
  reads: (m, ask) => {
    const goals = hillStartGoals(m)
    return { names: goals.map(([name]) => name), goals: goals.map(([, goal]) => maybe(reads(m, ask, goal))) }
  },
  answer: ({ names, goals }, make): { goals: Readonly<Record<string, HillStart | Gaps>> } => ({
    goals: Object.fromEntries(
      goals.map((g, i): [string, HillStart | Gaps] => [
        names[i] as string,
        isGaps(g) ? g : start(make, g as unknown as Start, names[i] as string),
      ]),
    ),
  }),
})

type Start = {
  slope: Fact
  laden: Laden
  trailer: { mass: Fact; nose: Fact; coupling: Fact } | null
  grip: Fact
  height: Fact
  wheelbase: Fact
  rolling: Fact
  radius: Figure
  pulling: PullingKnown
}
function start(make: Maker, g: Start, item: string): HillStart {
  const { trailer, laden } = g,
    { names, motors } = pulling(make, g.pulling, item)
  const first = motors.gears.map((_, u) => motors.ratios[motors.gears.slice(0, u).reduce((n, c) => n + c.value, 0)] as Value)
  const mass = trailer
    ? make.work(
        'train',
        trainMass,
        { car: laden.mass, trailer: trailer.mass, nose: trailer.nose },
        { item, label: `Mass of car and trailer, ${item}` },
      )
    : laden.mass
  const pulls = names.map((name, u) =>
    make.work(
      'pull',
      wheelForce,
      { torque: motors.torque[u] as Value, ratio: first[u] as Value, efficiency: motors.efficiency[u] as Value, radius: g.radius },
      { item: `${item} ${name}`, label: `Pull of ${name}` },
    ),
  )
  const force =
    pulls.length === 1
      ? (pulls[0] as Value)
      : make.work('pull-together', pullTogether, { forces: pulls }, { item, label: 'Pull of all motors' })
  const byPull = make.work('slope-by-pull', slopeHeld, { force, mass, rolling: g.rolling }, { item, label: 'Steepest slope by pull' })
  const byGrip = gripSlope(make, g, item, motors, pulls, mass)
  return {
    goal: g.slope,
    byPull,
    byGrip,
    radius: g.radius,
    need: make.work('need', slopeResistance, { mass, slope: g.slope, rolling: g.rolling }, { item, label: 'Pull the wanted slope needs' }),
    slope: make.work('slope', lesserSlope, { pull: byPull, grip: byGrip }, { item, label: `Hill start, ${item}` }),
    units: names.map((name, u) => ({ name, ratio: first[u] as Value, pull: pulls[u] as Figure })),
  }
}

type Motors = ReturnType<typeof pulling>['motors']
/** One driven axle or one shaft to both by a printed formula; motors on both axles, and any trailer, axle by axle. */
function gripSlope(make: Maker, g: Start, item: string, motors: Motors, pulls: readonly Value[], mass: Value): Figure {
  const label = { item, label: 'Steepest slope by grip' },
    { laden, trailer } = g,
    shares = motors.frontShare
  const paths = new Set(shares.map(s => ('path' in s ? s.path : s.id)))
  if (trailer || paths.size > 1)
    return make.work(
      'slope-by-grip',
      steepestStart,
      {
        pulls,
        frontShare: shares,
        carMass: laden.mass,
        mass,
        front: laden.front,
        rear: laden.rear,
        height: g.height,
        coupling: trailer ? trailer.coupling : g.height,
        wheelbase: g.wheelbase,
        rolling: g.rolling,
        grip: g.grip,
        centre: motors.centre,
      },
      label,
    )
  if (motors.centre.value === 'locked') return make.work('slope-by-grip', gripAll, { grip: g.grip }, label)
  const share = make.work('rear-share', rearShare, { rear: laden.rear, total: laden.mass }, { item })
  const grip = { grip: g.grip, rearShare: share, height: g.height, wheelbase: g.wheelbase }
  if (paths.has(FRONT.path)) return make.work('slope-by-grip', gripFront, grip, label)
  if (paths.has(REAR.path)) return make.work('slope-by-grip', gripRear, grip, label)
  return make.work('slope-by-grip', gripFixedShare, { ...grip, frontShare: shares[0] as Value }, label)
}
