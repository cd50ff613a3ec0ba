export * from './assess.ts'
export { type CellRun, type CellTable, cellRun } from './battery/cell-run.ts'
export {
  BOX_CONDUCTANCE,
  BOX_SHARE,
  CHARGE_RATE,
  CLASS_CELLS,
  type ClassCell,
  type ClassCurve,
  type ClassNumber,
  classCell,
  HEALTH,
  LAMINATE_REST,
  NCA_REST,
  UNTESTED,
  WIRING,
} from './battery/class-cells.ts'
export { type Grouping, moduleGrouping, stringSorting } from './battery/module-grouping.ts'
export { ladderCurrents } from './battery/parallel-branches.ts'
export { type Pulse, type PulseFit, pulseFit } from './battery/pulse-fit.ts'
export { blindString, weakestExpected } from './battery/weakest-of-many.ts'
export { classChargerLoss } from './charging/charger-loss.ts'
export * from './charging/class-taper.ts'
export * from './charging/class-values.ts'
export * from './drive/class-values.ts'
export { mapProblem } from './drive/loss-map.ts'
export * from './formulas.ts'
export { type HeadlineRow, headlineOf, headlineRows } from './headline.ts'
export * from './model/brief.ts'
export * from './model/charging.ts'
export * from './model/donor.ts'
export * from './model/drive.ts'
export * from './model/group.ts'
export * from './model/model.ts'
export * from './model/pack.ts'
export * from './model/trips.ts'
export { at, curve } from './numerics/curve.ts'
export * from './rules/find.ts'
export { type Catch, HAZARDS, type Hazard } from './rules/hazards.ts'
export * from './rules/limits.ts'
export * from './rules/rule.ts'
export { RULES } from './rules/rules.ts'
export { type Gate, KEYS, type Key, type KeyMeaning, keyMeaning, type Variant } from './rules/sets/keys.ts'
export type { Reading, Requirement, RuleSet, SetId } from './rules/sets/requirement.ts'
export { decides, type Limit, type Limits, limitsFor, RULE_SETS, ruleSet } from './rules/sets/sets.ts'
export { WORKS as SET_WORKS, type WorkId } from './rules/sets/works.ts'
export * from './sources.ts'
export { Answers } from './studies/answers.ts'
export { cost } from './studies/brief/cost.ts'
export { exchange } from './studies/brief/exchange.ts'
export { reuse } from './studies/reuse.ts'
export { HEADLINE, STUDIES } from './studies/studies.ts'
export * from './studies/study.ts'
export * from './vehicle/class-values.ts'
export { coastingRuns, type SpeedLog, stepTime } from './vehicle/coast-down-log.ts'
export { FUEL_DENSITY } from './vehicle/running-order.ts'
export * from './working/dimension.ts'
export * from './working/evaluate.ts'
export * from './working/formula.ts'
export * from './working/judge.ts'
export * from './working/kinds.ts'
export * from './working/leaves.ts'
export * from './working/spread.ts'
export * from './working/text.ts'
export * from './working/value.ts'
export * from './working/work.ts'
