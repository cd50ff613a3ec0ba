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
export { storedEnergy } from './battery/usable-energy.ts'
export { type Grouping, moduleGrouping, stringSorting } from './battery/module-grouping.ts'
export { ladderCurrents } from './battery/parallel-branches.ts'
export { type Pulse, type PulseFit, pulseFit } from './battery/pulse-fit.ts'
export { blindString, weakestExpected } from './battery/weakest-of-many.ts'
export * from './brakes/class-values.ts'
export { classChargerLoss } from './charging/charger-loss.ts'
export * from './charging/class-taper.ts'
export * from './charging/class-values.ts'
export * from './drive/class-values.ts'
export { mapProblem } from './drive/loss-map.ts'
export { alignedGap } from './fitting/aligned-gap.ts'
export { type AlignedBox, corners, EDGES, inBox, type OrientedBox, outOfBox, SQUARE, turned } from './fitting/box.ts'
export { boxDistance, type Nearest } from './fitting/box-distance.ts'
export { type Near, type Tube, tubeClearance } from './fitting/capsules.ts'
export { CLEARANCE_HABITS } from './fitting/clearance-habits.ts'
export { airRoundArm } from './fitting/hand-reach.ts'
export { type Answer, answerWithin, type Placed, type Whole } from './fitting/packing/answer.ts'
export { type BayAnswer, bayWithin, MOST_MODULES, packBay } from './fitting/packing/bay.ts'
export { bayFaults } from './fitting/packing/bay-faults.ts'
export { type BayModule, MODULE_FACES, MODULES_LIE, type ModuleFace, type PlacedModule } from './fitting/packing/bay-module.ts'
export { packBox } from './fitting/packing/box.ts'
export { type ContainerAnswer, containerWithin, packContainer } from './fitting/packing/container.ts'
export type { BlockBox, BoxKind, Support } from './fitting/packing/container-blocks.ts'
export { freeRooms } from './fitting/packing/free-rooms.ts'
export { modulesAllOneWay } from './fitting/packing/modules-all-one-way.ts'
export { packSearch, packWithin } from './fitting/packing/pack-search.ts'
export {
  type AxleLoad,
  BOX_SIDES,
  type BoxBuild,
  type BoxSide,
  CRITERIA,
  type Criterion,
  type PackAnswer,
  type PackArrangement,
  type PackedBox,
  type PackMix,
  type PackModule,
  type PackSpace,
  type PackTask,
} from './fitting/packing/pack-types.ts'
export { type PlacedRectangle, packRectangle, type Rectangle } from './fitting/packing/rectangle.ts'
export { boxOf, FACES, type Face, gapOf, type PlacedBody, roomBefore } from './fitting/placed-body.ts'
export { nearestInBox, pointToBox } from './fitting/point-to-box.ts'
export { type Met, segmentToSegment } from './fitting/segments.ts'
export { type Separation, separation } from './fitting/separating-axes.ts'
export { leastOverTravel } from './fitting/shaft-over-travel.ts'
export { type BoxRoom, boxRoom } from './studies/fit/box-room.ts'
export type { RoomForTwo } from './studies/fit/box-room-two-forms.ts'
export { SHELL_DENSITY } from './fitting/shell.ts'
export { type TriangleMesh, triangleCount } from './fitting/triangle-mesh.ts'
export { angleOfFurthestReach, type Envelope, type WheelSize, wheelEnvelope } from './fitting/turning-wheel.ts'
export { between, cross, dot, lengthOf, minus, plus, times, type Vector } from './fitting/vector.ts'
export { sweptBoxes } from './fitting/wheel-to-body.ts'
export { freeVolume, type VoxelField, voxelAt } from './fitting/voxel-field.ts'
export * from './formulas.ts'
export { type HeadlineRow, headlineOf, headlineRows } from './headline.ts'
export * from './model/brakes.ts'
export * from './model/brief.ts'
export * from './model/charging.ts'
export * from './model/donor.ts'
export * from './model/drive.ts'
export * from './model/fit.ts'
export { type LaidScan, type ScanTask, scansOf, scanTasks, type WayAsked } from './studies/fit/scan-task.ts'
export { type MeshesTask, type MeshTask, meshesTask, type PairTask } from './studies/fit/mesh-task.ts'
export { isAsLarge } from './studies/fit/stands-as.ts'
export type {
  ScanSurvey as SurveyOfScan,
  SurveyedGap,
  SurveyedMesh,
  SurveyedMeshes,
  SurveyedPair,
  SurveyedWay,
  Surveys,
} from './model/survey.ts'
export * from './model/group.ts'
export * from './model/high-voltage.ts'
export * from './model/model.ts'
export * from './model/pack.ts'
export * from './model/steering.ts'
export * from './model/trips.ts'
export { at, curve } from './numerics/curve.ts'
export { GOAL_RULES, type GoalKind } from './rules/brief/goals.ts'
export * from './rules/find.ts'
export { type Catch, HAZARDS, type Hazard } from './rules/hazards.ts'
export { airToKept } from './rules/fit/clear.ts'
export * from './rules/limits.ts'
export * from './rules/rule.ts'
export { RULES } from './rules/rules.ts'
export { type Gate, KEYS, type Key, type KeyMeaning, keyMeaning, type Variant } from './rules/sets/keys.ts'
export type { Reading, Requirement, RuleSet, SetId } from './rules/sets/requirement.ts'
export { decides, type Limit, type Limits, limitsFor, RULE_SETS, ruleSet } from './rules/sets/sets.ts'
export { WORKS as SET_WORKS, type WorkId } from './rules/sets/works.ts'
export * from './sources.ts'
export { classJacket } from './high-voltage/class-values.ts'
export * from './steering/class-values.ts'
export { Answers } from './studies/answers.ts'
export { cost } from './studies/brief/cost.ts'
export { exchange } from './studies/brief/exchange.ts'
export { ledger } from './studies/donor/ledger.ts'
export { loadCases } from './studies/donor/load-cases.ts'
export { tyres } from './studies/donor/tyres.ts'
export { ratingsOf } from './studies/donor/ratings.ts'
export { type PlacedShape, places, shapesOf } from './studies/fit/places.ts'
export { cornersOf } from './studies/fit/outlines.ts'
export { armLine, handlesOf } from './studies/fit/reach.ts'
export { packModel } from './studies/pack/pack-model.ts'
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
