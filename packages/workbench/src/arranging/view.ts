import type { System } from '@ampwright/conversion'
import type { Criterion, PackAnswer, PackArrangement, PackTask, PlacedModule } from '@ampwright/engine'
import { shownNumber } from '../shown.ts'
import type { ArrangingPlan } from './plan.ts'

/** One arrangement in words: ready to print. */
export type ArrangementWords = {
  /** What it is taken by, from 1. */
  readonly number: number
  readonly energy: string
  readonly mass: string
  /** Least of what the two axles may still carry, and on which. */
  readonly margin: string
  readonly overloaded: boolean
  readonly height: string
  readonly cable: string
  readonly modules: string
  readonly boxes: readonly string[]
  readonly best: string
}
/** What a search has found so far, as terminal and screen show it. */
export type ArrangingView = {
  readonly arrangements: readonly ArrangementWords[]
  /** How far it is, and how near the most that could be. */
  readonly told: readonly string[]
  readonly proven: boolean
  readonly seed: number
  readonly steps: number
}
/** Heads of the columns of a table of arrangements. */
export const ARRANGEMENT_HEADS = [
  ['energy', 'energy'],
  ['mass', 'mass'],
  ['margin', 'least left on an axle'],
  ['height', 'centre of mass above the ground'],
  ['cable', 'cable'],
  ['modules', 'modules'],
] as const satisfies readonly (readonly [keyof ArrangementWords, string])[]

const BEST: Readonly<Record<Criterion, string>> = {
  energy: 'most energy',
  mass: 'lightest',
  margin: 'easiest on the axles',
  height: 'lowest',
  boxes: 'fewest boxes',
  cable: 'shortest cable',
}

const counted = (n: number, one: string, more = `${one}s`): string => `${n} ${n === 1 ? one : more}`
const said = (value: number, kind: 'mass' | 'length' | 'energy', system: System): string => shownNumber(value, kind, '', system)

export const arrangingView = (plan: ArrangingPlan, answer: PackAnswer, system: System): ArrangingView => ({
  arrangements: answer.arrangements.map((a, i) => words(a, i + 1, answer, system)),
  told: toldOf(plan, answer),
  proven: answer.gap === 0,
  seed: answer.seed,
  steps: answer.steps,
})

function words(a: PackArrangement, number: number, { arrangements }: PackAnswer, system: System): ArrangementWords {
  const axle = a.frontMargin <= a.rearMargin ? 'front' : 'rear',
    least = Math.min(a.frontMargin, a.rearMargin)
  // What all of them are best in tells none from another.
  const all = a.boxes.flatMap(b => b.modules),
    telling = a.bestIn.filter(c => !arrangements.every(o => o.bestIn.includes(c)))
  return {
    number,
    energy: said(a.energy, 'energy', system),
    mass: said(Math.round(a.mass * 10) / 10, 'mass', system),
    margin:
      least < 0 ? `${said(Math.ceil(-least), 'mass', system)} too much, ${axle}` : `${said(Math.floor(least), 'mass', system)}, ${axle}`,
    overloaded: least < 0,
    height: said(Math.round(a.height * 1000) / 1000, 'length', system),
    cable: said(Math.round(a.cable * 100) / 100, 'length', system),
    modules: a.strings === 1 ? numbers(all) : `${numbers(all)} in ${counted(a.strings, 'string')}`,
    boxes: a.boxes.map(b => `${numbers(b.modules)} in ${b.space}`),
    best: telling.map(c => BEST[c]).join(', '),
  }
}

/** How many modules there are to use, where the file says it. */
function stockOf({ have = Infinity, mix }: PackTask): readonly string[] {
  const said: readonly string[] = [
    ...(have < Infinity ? [counted(have, 'module')] : []),
    ...(mix && mix.have < Infinity ? [`${have < Infinity ? mix.have : counted(mix.have, 'module')} of the other form`] : []),
  ]
  return said.length ? [`There are ${said.join(' and ')} to use.`] : []
}

/** Modules by form: so many, and so many of the other one. */
function numbers(modules: readonly PlacedModule[]): string {
  const others = modules.filter(m => m.other).length
  return [...(others < modules.length ? [modules.length - others] : []), ...(others > 0 ? [`${others} other`] : [])].join(' + ')
}

function toldOf(plan: ArrangingPlan, answer: PackAnswer): readonly string[] {
  const { task, unplaced } = plan,
    { arrangements, bound, gap, spaces, seed, steps, counts } = answer
  if (!Number.isFinite(bound)) return [`Looking at the rooms: ${spaces.length} of ${task.spaces.length} so far.`]
  const most = bound - gap,
    room = spaces.map(s => `${s.name}: ${s.found === s.bound ? s.found : `${s.found}, never more than ${s.bound}`}`).join('; ')
  const unit = counts ? ' cell groups' : '',
    string = counts && task.mix ? `${task.mix.groups.string} cell groups` : counted(task.series, 'module')
  return [
    arrangements.length
      ? `${counted(arrangements.length, 'arrangement')} of up to ${counts ? `${most} cell groups` : counted(most, 'module')}. Whole strings in these rooms never hold more than ${bound}${unit}${gap === 0 ? ': none is fuller' : `; ${gap} may still be found`}.`
      : `No whole string of ${string} fits yet. The rooms never hold more than ${bound}${unit} in whole strings.`,
    `What each room holds${counts ? ', in cell groups' : ''}: ${room}.`,
    ...stockOf(task),
    `Seed ${seed}, ${counted(steps, 'step')}: the same again gives the same again.`,
    ...(unplaced.length ? [`Not kept clear of, because place or size is missing: ${unplaced.join(', ')}.`] : []),
  ]
}
