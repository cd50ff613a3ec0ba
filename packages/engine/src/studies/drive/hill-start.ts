import { steepestStart } from '../../drive/steepest-start.ts'
import { pullTogether, wheelForce } from '../../drive/wheel-force.ts'
import type { HillStartGoal } from '../../model/brief.ts'
import type { Model } from '../../model/model.ts'
import { gripAll, gripFront, gripRear, rearShare } from '../../vehicle/grip.ts'
import { lesserSlope, slopeHeld, slopeResistance } from '../../vehicle/hill.ts'
import { gripFixedShare } from '../../vehicle/traction.ts'
import { type Fact, type Figure, standard, type Value } from '../../working/value.ts'
import { type StandingKnown, standing, standingReads } from '../donor/situation.ts'
import { type Ask, type Gaps, isGaps, type Known, type Maker, maybe, study } from '../study.ts'
import { FRONT, REAR } from './operating-points.ts'
import { conditionsOf, pulling, pullingReads, ratiosOf } from './pulling.ts'

export type HillStart = {
  readonly goal: Fact
  readonly slope: Figure
  readonly byPull: Figure
  readonly byGrip: Figure
  readonly need: Figure
  /** Ratio and pull of each unit at this start, and the slope grip leaves however hard this one unit pulls. */
  readonly units: readonly { readonly name: string; readonly ratio: Value; readonly pull: Figure; readonly byGrip: Figure }[]
  readonly radius: Value
}
export const hillStartGoals = (m: Model): readonly (readonly [string, HillStartGoal])[] =>
  Object.entries(m.brief.goals).filter((g): g is [string, HillStartGoal] => g[1]?.kind === 'hill start')

function reads(m: Model, ask: Ask, goal: HillStartGoal) {
  const conditions = conditionsOf(goal, m.brief.conditions)
  return {
    slope: goal.slope,
    standing: standingReads(m, ask, conditions),
    pulling: pullingReads(m, ask, { surface: conditions.surface, transfer: goal.transfer }),
  }
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
      goals.map((g, i): [string, HillStart | Gaps] => [names[i] as string, isGaps(g) ? g : start(make, g, names[i] as string)]),
    ),
  }),
})

type Start = Known<ReturnType<typeof reads>>
function start(make: Maker, { slope: wanted, standing: known, pulling: pulled }: Start, item: string): HillStart {
  const p = pulling(make, pulled, item),
    { names, motors } = p,
    { mass, rolling } = standing(make, known, item),
    { radius } = known
  const first = names.map((_, u) => ratiosOf(p, u)[0] as Value)
  const pulls = names.map((name, u) =>
    make.work(
      'pull',
      wheelForce,
      { torque: motors.torque[u] as Value, ratio: first[u] as Value, efficiency: motors.efficiency[u] as Value, radius },
      { item: `${item} ${name}`, label: `Pull of ${name}` },
    ),
  )
  const force =
    pulls.length === 1
      ? (pulls[0] as Value)
      : make.work('pull-together', pullTogether, { forces: pulls }, { item, label: 'Pull of all motors' })
  const byPull = make.work('slope-by-pull', slopeHeld, { force, mass, rolling }, { item, label: 'Steepest slope by pull' })
  const grip = gripSlopes(make, known, item, motors, names, pulls, mass, rolling)
  return {
    goal: wanted as Fact,
    byPull,
    byGrip: grip.all,
    radius,
    need: make.work('need', slopeResistance, { mass, slope: wanted, rolling }, { item, label: 'Pull the wanted slope needs' }),
    slope: grip.together ?? make.work('slope', lesserSlope, { pull: byPull, grip: grip.all }, { item, label: `Hill start, ${item}` }),
    units: names.map((name, u) => ({ name, ratio: first[u] as Value, pull: pulls[u] as Figure, byGrip: grip.each[u] ?? grip.all })),
  }
}

type Motors = ReturnType<typeof pulling>['motors']
/** More than any motor pulls: what is left is grip. */
const ANY_PULL = standard('pull.unlimited', 'any pull', 'F_k', 1e9, 'N', { work: 'definition', place: 'grip alone' })
type GripSlopes = {
  /** However hard all motors pull. */
  readonly all: Figure
  /** With the pulls there are, axle by axle, grip of each within; only where motors on both axles or a trailer ask for it. */
  readonly together?: Figure
  /** However hard one unit pulls, the others as they are. */
  readonly each: readonly Figure[]
}
/** One driven axle or one shaft to both by a printed formula; motors on both axles, and any trailer, axle by axle. */
function gripSlopes(
  make: Maker,
  g: StandingKnown,
  item: string,
  motors: Motors,
  names: readonly string[],
  pulls: readonly Value[],
  mass: Value,
  rolling: Value,
): GripSlopes {
  const label = { item, label: 'Steepest slope by grip' },
    { laden, trailer } = g,
    shares = motors.frontShare
  const paths = new Set(shares.map(s => ('path' in s ? s.path : s.id)))
  if (trailer || paths.size > 1) {
    const by = (key: string, forces: readonly Value[], more: { item: string; label: string }): Figure =>
      make.work(
        key,
        steepestStart,
        {
          pulls: forces,
          frontShare: shares,
          carMass: laden.mass,
          mass,
          front: laden.front,
          rear: laden.rear,
          height: g.height,
          coupling: trailer ? trailer.coupling : g.height,
          wheelbase: g.wheelbase,
          rolling,
          grip: g.grip,
          centre: motors.centre,
        },
        more,
      )
    return {
      all: by(
        'slope-by-grip',
        pulls.map(() => ANY_PULL),
        label,
      ),
      together: by('slope', pulls, { item, label: `Hill start, ${item}` }),
      each:
        names.length === 1
          ? []
          : names.map((name, u) =>
              by(
                'slope-by-grip-of',
                pulls.map((f, k) => (k === u ? ANY_PULL : f)),
                { item: `${item} ${name}`, label: `Steepest slope however hard ${name} pulls` },
              ),
            ),
    }
  }
  const one = (): Figure => {
    if (motors.centre.value === 'locked') return make.work('slope-by-grip', gripAll, { grip: g.grip }, label)
    const share = make.work('rear-share', rearShare, { rear: laden.rear, total: laden.mass }, { item })
    const grip = { grip: g.grip, rearShare: share, height: g.height, wheelbase: g.wheelbase }
    if (paths.has(FRONT.path)) return make.work('slope-by-grip', gripFront, grip, label)
    if (paths.has(REAR.path)) return make.work('slope-by-grip', gripRear, grip, label)
    return make.work('slope-by-grip', gripFixedShare, { ...grip, frontShare: shares[0] as Value }, label)
  }
  return { all: one(), each: [] }
}
