import { constantShows, type EfficiencyPoints, pointsProblem } from '../../drive/loss-fit.ts'
import {
  efficiencyByLaw,
  efficiencyStray,
  greatestStray,
  lawLosses,
  lawScatter,
  lossByLaw,
  lossFactorByPoints,
  lossLawFit,
} from '../../drive/loss-law.ts'
import type { EfficiencyPoint } from '../../model/drive.ts'
import type { Named } from '../../model/group.ts'
import { type Fact, type Figure, type Gap, type Grid, isGap, type Value } from '../../working/value.ts'
import { type Ask, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import type { Envelope } from './envelopes.ts'

type Points = { readonly torque: readonly Value[]; readonly speed: readonly Value[]; readonly efficiency: readonly Value[] }
type Part = 'copper' | 'iron' | 'windage' | 'constant'
/** The law of losses that a motor’s points of efficiency give. */
export type MotorLaw = {
  readonly points: Points
  readonly law: Readonly<Record<Part, Figure>>
  /** ± of the law about its best value, which is none off it. */
  readonly scatter: Fact
  /** Parts that the points alone would put below nothing, in words. */
  readonly held: readonly string[]
  /** Whether the points tell a constant loss from what rises with speed. */
  readonly constant: boolean
  readonly greatest: Figure
  readonly farthest: { readonly name: string; readonly path: string }
}

const PARTS: Readonly<Record<Part, string>> = {
  copper: 'copper loss',
  iron: 'iron loss',
  windage: 'windage',
  constant: 'constant loss',
}
const DATASHEET = { tool: 'datasheet or efficiency chart of exactly this motor', accuracy: 'as stated', minutes: 30 }
const pathOf = (unit: string): string => `drive.units.${unit}.motor.efficiency-points`

const plain = (p: Points): EfficiencyPoints => ({
  torque: p.torque.map(v => v.value),
  speed: p.speed.map(v => v.value),
  efficiency: p.efficiency.map(v => v.value),
})
/** Points from which no law can be had, as the gap they leave: what was found, what is accepted. */
function unusable(unit: string, points: Named<EfficiencyPoint>): Gap | null {
  const list = Object.values(points).flatMap(p => (isGap(p.torque) || isGap(p.speed) || isGap(p.efficiency) ? [] : [p]))
  if (list.length < Object.keys(points).length) return null
  const of = (key: 'torque' | 'speed' | 'efficiency'): Value[] => list.map(p => p[key] as Value)
  const problem = pointsProblem(plain({ torque: of('torque'), speed: of('speed'), efficiency: of('efficiency') }))
  return problem
    ? {
        gap: true,
        path: pathOf(unit),
        label: `points of efficiency: found ${problem.found}; accepted: ${problem.accepted}`,
        until: 'before the part is bought',
        measure: DATASHEET,
        why: 'missing',
      }
    : null
}

/** The law of losses behind a few points of a datasheet, motor by motor; null where a motor has no points. */
export const motorLosses = study({
  id: 'loss-law',
  stage: 'drive',
  asks: 'What law of losses do the points of a datasheet give, and do they agree with it?',
  reads: m => ({
    names: Object.keys(m.drive.units),
    units: Object.entries(m.drive.units).map(([name, { motor }]) => {
      const points = Object.entries(motor.efficiencyPoints)
      if (points.length === 0) return null
      return maybe({
        unusable: unusable(name, motor.efficiencyPoints),
        named: points.map(([point]) => point),
        torque: points.map(([, p]) => p.torque),
        speed: points.map(([, p]) => p.speed),
        efficiency: points.map(([, p]) => p.efficiency),
      })
    }),
  }),
  answer: ({ names, units }, make): { units: Readonly<Record<string, MotorLaw | Gaps | null>> } => ({
    units: Object.fromEntries(
      units.map((u, i): [string, MotorLaw | Gaps | null] => {
        const name = names[i] as string
        return [name, u === null || isGaps(u) ? u : lawOf(make, name, u.named, u)]
      }),
    ),
  }),
})

function lawOf(make: Maker, item: string, named: readonly string[], { torque, speed, efficiency }: Points): MotorLaw {
  const points = { torque, speed, efficiency },
    constant = constantShows(plain(points)),
    best = lossLawFit(plain(points)),
    held = (Object.keys(PARTS) as Part[]).filter(p => best[p] === 0 && (p !== 'constant' || constant))
  const { figures } = make.all('', lossLawFit, points, { item, labels: labels(item, held, constant) })
  const { free, ...law } = figures as Readonly<Record<Part | 'free', Figure>>
  const scatter = make.work(
    'scatter',
    lawScatter,
    { ...points, ...law, free },
    { item, label: `Scatter of the losses of ${item} about their law` },
  )
  const byLaw = named.map((point, j) =>
    make.work(
      'efficiency',
      efficiencyByLaw,
      { torque: torque[j] as Value, speed: speed[j] as Value, ...law },
      { item: `${item} ${point}`, label: `Efficiency by the law, ${item}, ${point}` },
    ),
  )
  const strays = named.map((point, j) =>
    make.work(
      'off',
      efficiencyStray,
      { stated: efficiency[j] as Value, law: byLaw[j] as Figure },
      { item: `${item} ${point}`, label: `Efficiency off the law, ${item}, ${point}` },
    ),
  )
  const greatest = make.work('greatest-off', greatestStray, { each: strays }, { item, label: `Greatest efficiency off the law, ${item}` })
  make.table(
    'points',
    {
      label: `Points of efficiency of ${item}, and the law`,
      columns: [
        { key: 'torque', label: 'torque', unit: 'N·m', shows: 'torque' },
        { key: 'speed', label: 'speed', unit: 'rad/s', shows: 'rotational speed' },
        { key: 'stated', label: 'stated', unit: '1', shows: 'share' },
        { key: 'law', label: 'by the law', unit: '1', shows: 'share' },
      ],
      rows: named.map((name, j) => ({ name, cells: { torque: torque[j], speed: speed[j], stated: efficiency[j], law: byLaw[j] } })),
    },
    item,
  )
  const farthest = named[strays.findIndex(s => s.value === greatest.value)] as string
  return {
    points,
    law,
    scatter: about(item, named.length, scatter),
    held: held.map(p => PARTS[p]),
    constant,
    greatest,
    farthest: { name: farthest, path: `${pathOf(item)}.${farthest}.efficiency` },
  }
}
/** A part that the fit holds, or cannot see, says so wherever its figure is shown. */
const labels = (item: string, held: readonly Part[], constant: boolean) => {
  const of = (part: Part, words: string): string => `${words}, by the points of ${item}${held.includes(part) ? ' (held at zero)' : ''}`
  return {
    copper: of('copper', 'Copper loss over torque squared'),
    iron: of('iron', 'Iron loss over speed'),
    windage: of('windage', 'Windage over speed cubed'),
    constant: `${of('constant', 'Constant loss')}${constant ? '' : ' (left out: they do not show it)'}`,
    free: `Parts of the loss of ${item} above zero`,
  }
}
/** The points scatter about the law: nothing in the best value, but the half-width goes into every band. */
const about = (item: string, points: number, half: Figure): Fact => ({
  path: `${pathOf(item)}#scatter`,
  label: `Scatter of the losses about their law, ${item}`,
  symbol: 'ε',
  unit: '1',
  shows: 'share',
  value: 0,
  half: half.value,
  origin: { how: 'datasheet', note: `${points} points of efficiency` },
})

/** The law of a unit, where its points give one. */
export function lawFor(ask: Ask, unit: string): MotorLaw | undefined {
  const answer = ask(motorLosses),
    law = isGaps(answer) ? null : (answer.units[unit] as MotorLaw | Gaps | null)
  return law === null || isGaps(law) ? undefined : law
}
/** Losses of a unit by its law, as a map, and the factor that carries the ± of points and law. */
export function lossesByLaw(
  make: Maker,
  { law, points, scatter }: MotorLaw,
  own: Value,
  { motorTorque: peakTorque, topSpeed }: Envelope,
  item: string,
): { losses: Value<Grid>; factor: Value } {
  const { copper, iron, windage, constant } = law,
    numbers = { copper: copper.value, iron: iron.value, windage: windage.value, constant: constant.value }
  const losses = make.derive(
    'losses',
    lossByLaw,
    { ...law, ...points, peakTorque, topSpeed },
    lawLosses(numbers, peakTorque.value, topSpeed.value, plain(points)),
    'W',
    { item, label: `Losses of ${item} by the law of its points` },
  )
  return {
    losses,
    factor: make.work('loss-factor', lossFactorByPoints, { own, scatter, losses, ...points }, { item, label: `Loss factor of ${item}` }),
  }
}
