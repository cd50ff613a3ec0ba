export type { Extent, Quantity } from './axis.ts'
export { accelerationChart, type RunOptions } from './charts/acceleration.ts'
export { brakeForces } from './charts/brake-forces.ts'
export { energyFlow } from './charts/energy-flow.ts'
export { pullMarks, runMarks } from './charts/goal-marks.ts'
export { gripUsed } from './charts/grip-used.ts'
export { motorCurvesChart } from './charts/motor-curves.ts'
export { rangeTable } from './charts/range-table.ts'
export { type RatioOptions, ratioWindowChart } from './charts/ratio-window.ts'
export { traceChart } from './charts/trace-chart.ts'
export { type PullOptions, type PullTraces, tractiveForce } from './charts/tractive-force.ts'
export { type TripOptions, tripChart } from './charts/trip.ts'
export { type VoltageMarks, voltageWindowChart } from './charts/voltage-window.ts'
export { csvOf } from './csv.ts'
export { type Drawing, drawingsOf, type Kind } from './drawings.ts'
export { type Band, type ChartSpec, type Line, lineChart, type Mark, type Panel } from './line-chart.ts'
export {
  type Chart,
  type Listing,
  type Outcome,
  type Page,
  type Picture,
  pixelAt,
  type Read,
  type Readout,
  type Scale,
  SHAPES,
  type Units,
  valueAt,
} from './picture.ts'
export { type BoxToDraw, boxDrawing } from './scene/box-drawing.ts'
export { type BoxSizes, boxPlan, type Plan, type PlanLine, type PlanSize, type PlanWord } from './scene/box-plan.ts'
export { type Scene, type SceneBody, type SceneRoom, type SceneShaft, type SceneWheel, sceneOf } from './scene/scene.ts'
export { carView, type Side } from './scene/view.ts'
export { type Points, thin } from './thin.ts'
export { type Handle, type Stand, type Window, type Windows, type WindowsSpec, windowsChart } from './windows.ts'
