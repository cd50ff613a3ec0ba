import type { Named } from './group.ts'

/** Along, across, up. */
type Three = readonly [number, number, number]

/** How near a body comes to a scan, where it stood when that was measured. */
export type SurveyedGap = {
  /** Place, sides and turns of the body as they were: a gap of another pose says nothing. */
  readonly pose: string
  readonly place: Three
  /** 0 where it runs into the scan [m]. */
  readonly apart: number
  /** The nearest place of the scan, or one that both share. */
  readonly at: Three
  /** From the scan to the body along the nearest line, of length one; nought where the gap is. */
  readonly away: Three
}
/** The tightest place of a body's way in past a scan; how far out of its seat it stands there [m]. Where it runs into the scan, where it does so first. */
export type SurveyedWay = SurveyedGap & {
  readonly out: number
  /** Nowhere on the way is it nearer than this [m]. */
  readonly atLeast: number
}
/** What geometry measured of one scan, outside of the engine. */
export type ScanSurvey = {
  /** File, points and all that was asked, as they were: a survey of another pose says nothing. */
  readonly pose: string
  /** Why nothing could be measured. */
  readonly fault?: string
  /** What the points left over, root of the mean square [m]. */
  readonly residual: number
  /** The same of each point, in the order of their names [m]. */
  readonly residuals: readonly number[]
  /** Free cubes of the edge asked for, where they were. */
  readonly cubes?: number
  /** Share of each side of the limits that the free space reached; why there is none. */
  readonly reached?: Readonly<Record<string, number>>
  readonly noSpace?: string
  readonly gaps: Named<SurveyedGap>
  /** Of bodies that say which way they go in. */
  readonly ways: Named<SurveyedWay>
}
/** By name of the scan in the file. They come from outside and are no part of the file. */
export type Surveys = Named<ScanSurvey>
