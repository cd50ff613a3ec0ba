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

/** What a mesh of a part measures in its own axes, outside of the engine. */
export type SurveyedMesh = {
  /** File, unit and sides as they were: a survey of another pose says nothing. */
  readonly pose: string
  /** Why it cannot be read. */
  readonly fault?: string
  /** Extent along, across and up [m]. */
  readonly sides: Three
  /** Its skin has no open edges, so that what lies inside it is noticed. */
  readonly closed: boolean
  readonly triangles: number
}
/** How near two shapes come, one of them or both by its mesh. */
export type SurveyedPair = {
  readonly pose: string
  /** Middles of both, as they were. */
  readonly places: readonly [Three, Three]
  /** 0 where they run into each other [m]. */
  readonly apart: number
  /** The nearest place of the first, or one that both share. */
  readonly at: Three
  /** From the first to the second along the nearest line, of length one; nought where the gap is. */
  readonly away: Three
}
/** Meshes by name of their shape, pairs by both names. They come from outside and are no part of the file. */
export type SurveyedMeshes = { readonly shapes: Named<SurveyedMesh>; readonly pairs: Named<SurveyedPair> }
