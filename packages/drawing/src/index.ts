export type { Extent, Quantity } from './axis.ts'
export { traceChart } from './charts/trace-chart.ts'
export { type PullOptions, type PullTraces, tractiveForce } from './charts/tractive-force.ts'
export { csvOf } from './csv.ts'
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
export { type Points, thin } from './thin.ts'
