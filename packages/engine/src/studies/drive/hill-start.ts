import { gripAll, gripFront, gripRear, rearShare } from '../../vehicle/grip.ts'
import { lesserSlope, slopeHeld, slopeResistance } from '../../vehicle/hill.ts'
import { pullTogether, wheelForce } from '../../drive/wheel-force.ts'
import type { Conditions, HillStartGoal } from '../../model/brief.ts'
import { type Fact, type Figure, isGap, type Value } from '../../working/value.ts'
import { loadCases } from '../donor/load-cases.ts'
import { rolling } from '../donor/rolling.ts'
import { from, type Gaps, isGaps, maybe, study } from '../study.ts'
import { ratios } from './ratios.ts'

export type HillStart = {
  readonly goal: Fact
  readonly slope: Figure
  readonly byPull: Figure
  readonly byGrip: Figure
  readonly need: Figure
}

/** A goal's own condition, or the brief's common one where the goal leaves it out. */
export const condition = <K extends keyof Conditions>(goal: Conditions, common: Conditions, key: K): Conditions[K] =>
  isGap(goal[key]) ? common[key] : goal[key]

/** Hill starts the brief asks for: the steepest slope by pull and by grip, and the pull the wanted slope needs. */
export const hillStart = study({
  id: 'hill-start',
  stage: 'drive',
  asks: 'Does it pull away on the steepest hill wanted?',
  reads: (m, ask) => {
    const goals = Object.entries(m.brief.goals).filter((g): g is [string, HillStartGoal] => g[1]?.kind === 'hill start')
    const loads = ask(loadCases),
      common = m.brief.conditions
    return {
      names: goals.map(([name]) => name),
      goals: goals.map(([, goal]) => {
        const load = condition(goal, common, 'load'),
          surface = condition(goal, common, 'surface')
        return maybe({
          slope: goal.slope,
          laden: isGap(load)
            ? load
            : from(
                loads,
                l =>
                  l.cases[load.value] ?? {
                    gaps: [
                      {
                        gap: true as const,
                        path: `brief.loads.${load.value}`,
                        label: `load case ${load.value}`,
                        until: 'any time' as const,
                      },
                    ],
                  },
              ),
          grip: isGap(surface) ? surface : m.donor.grip[surface.value],
          height: m.donor.centreHeight,
          wheelbase: m.donor.wheelbase,
          rolling: m.donor.rollingResistance,
          radius: ask(rolling),
          units: Object.entries(m.drive.units).map(([name, u]) => ({
            name,
            axle: u.axle,
            torque: u.motor.peakTorque,
            efficiency: u.efficiency,
            ratio: from(ask(ratios), r => r.units[name] as Figure | Gaps),
          })),
        })
      }),
    }
  },
  answer: ({ names, goals }, make): { goals: Readonly<Record<string, HillStart | Gaps>> } => {
    const out: Record<string, HillStart | Gaps> = {}
    for (const [i, g] of goals.entries()) {
      const item = names[i] as string
      if (isGaps(g)) {
        out[item] = g
        continue
      }
      const { mass, rear } = g.laden
      const forces = g.units.map(u =>
        make.work(
          'pull',
          wheelForce,
          { torque: u.torque, ratio: u.ratio, efficiency: u.efficiency, radius: g.radius.radius },
          { item: `${item} ${u.name}`, label: `Pull of ${u.name}` },
        ),
      )
      const force =
        forces.length === 1
          ? (forces[0] as Value)
          : make.work('pull-together', pullTogether, { forces }, { item, label: 'Pull of all motors' })
      const byPull = make.work('slope-by-pull', slopeHeld, { force, mass, rolling: g.rolling }, { item, label: 'Steepest slope by pull' })
      const share = make.work('rear-share', rearShare, { rear, total: mass }, { item })
      const axles = new Set(g.units.map(u => u.axle.value)),
        all = axles.has('both') || axles.size > 1
      const grip = { grip: g.grip, rearShare: share, height: g.height, wheelbase: g.wheelbase }
      const label = { item, label: 'Steepest slope by grip' }
      const byGrip = all
        ? make.work('slope-by-grip', gripAll, { grip: g.grip }, label)
        : axles.has('front')
          ? make.work('slope-by-grip', gripFront, grip, label)
          : make.work('slope-by-grip', gripRear, grip, label)
      out[item] = {
        goal: g.slope,
        byPull,
        byGrip,
        need: make.work(
          'need',
          slopeResistance,
          { mass, slope: g.slope, rolling: g.rolling },
          { item, label: 'Pull the wanted slope needs' },
        ),
        slope: make.work('slope', lesserSlope, { pull: byPull, grip: byGrip }, { item, label: `Hill start, ${item}` }),
      }
    }
    return { goals: out }
  },
})
