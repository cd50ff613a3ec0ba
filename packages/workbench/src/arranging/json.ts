import type { Model, PackAnswer } from '@ampwright/engine'
import { pathOf } from '../edits.ts'
import { arrangementEdits } from './edits.ts'
import type { ArrangingPlan } from './plan.ts'

/** The documented JSON of a search for an arrangement: see docs/json.md. */
export const arrangingJson = (model: Model, plan: ArrangingPlan, answer: PackAnswer): object => ({
  seed: answer.seed,
  steps: answer.steps,
  bound: answer.bound,
  gap: answer.gap,
  ...(answer.counts ? { counts: answer.counts } : {}),
  spaces: answer.spaces,
  rooms: plan.rooms.map(({ name, space, kind, room }) => ({ name, space, kind, low: room.low, high: room.high })),
  unplaced: plan.unplaced,
  arrangements: answer.arrangements.map((a, i) => ({
    number: i + 1,
    strings: a.strings,
    modules: a.modules,
    ...(a.inString ? { inString: a.inString } : {}),
    energy: a.energy,
    mass: a.mass,
    frontMargin: a.frontMargin,
    rearMargin: a.rearMargin,
    height: a.height,
    cable: a.cable,
    bestIn: a.bestIn,
    boxes: a.boxes.map(({ space, modules, outer, busbars, mass }) => ({
      room: space,
      low: outer.low,
      high: outer.high,
      busbars,
      mass,
      modules: modules.map(m => ({ low: m.box.low, high: m.box.high, down: m.down, ...(m.other ? { other: true } : {}) })),
    })),
    edits: arrangementEdits(model, plan, a).map(e => ({ path: pathOf(e.path), now: e.now })),
  })),
})
