import type { AlignedBox } from '../box.ts'
import type { Vector } from '../vector.ts'
import type { VoxelField } from '../voxel-field.ts'
import type { BayModule, PlacedModule } from './bay-module.ts'

/** A space of the car for one battery box: square to the car, or free cubes. Axes x behind the front axle, y to the right, z up [m]. */
export type PackSpace = { readonly name: string } & (
  | { readonly kind: 'box'; readonly low: Vector; readonly high: Vector }
  | { readonly kind: 'field'; readonly field: VoxelField }
)

/** A module as a battery takes it. */
export type PackModule = BayModule & {
  readonly mass: number
  /** Energy of one module [J]. */
  readonly energy: number
}

/** What a battery box takes of its space, and weighs. */
export type BoxBuild = {
  /** Thickness of all walls, of floor and of lid [m]. */
  readonly wall: number
  /** Height of the cooling plate under the modules, 0 without [m]. */
  readonly plate: number
  /** Air between the modules and the lid [m]. */
  readonly lid: number
  /** Width of the room kept for busbars along one side [m]. */
  readonly busbar: number
  /** Mass of wall, floor and lid for their area [kg/m²]. */
  readonly sheet: number
}

/** One axle: what it carries without the battery, and may carry [kg]. */
export type AxleLoad = { readonly mass: number; readonly limit: number }

/** A second form of module of the same cells, as many side by side in each group, but another number of groups one after the other. */
export type PackMix = {
  readonly other: PackModule
  /** Cell groups one after the other in a module of each form, and in a whole string. */
  readonly groups: { readonly main: number; readonly other: number; readonly string: number }
  /** Modules of the other form there are to use. */
  readonly have: number
}

export type PackTask = {
  readonly spaces: readonly PackSpace[]
  readonly module: PackModule
  /** Modules there are to use; left out, as many as are wanted. */
  readonly have?: number
  /** With a second form the string is filled up to its cell groups, and `series` says nothing. */
  readonly mix?: PackMix
  readonly box: BoxBuild
  /** Modules, or groups of modules in parallel, one after the other from pole to pole. */
  readonly series: number
  /** Fewest and most strings, that is modules in parallel in each group. */
  readonly strings: { readonly least: number; readonly most: number }
  /** Whether the modules of one parallel group may stand in different boxes. */
  readonly splitGroups: boolean
  /** Distance of the axles [m], and both axles. */
  readonly wheelbase: number
  readonly front: AxleLoad
  readonly rear: AxleLoad
}

export type BoxSide = 'front' | 'back' | 'left' | 'right'
export const BOX_SIDES: readonly BoxSide[] = ['front', 'back', 'left', 'right']

/** One battery box of an arrangement. */
export type PackedBox = {
  readonly space: string
  readonly modules: readonly PlacedModule[]
  /** Whole parallel groups in it; undefined where groups may be split. */
  readonly groups: number | undefined
  /** The cuboid about modules, busbars, plate, lid and walls. In a space of cubes the box may follow its modules instead. */
  readonly outer: AlignedBox
  readonly busbars: BoxSide
  readonly mass: number
}

export const CRITERIA = ['energy', 'mass', 'margin', 'height', 'boxes', 'cable'] as const
export type Criterion = (typeof CRITERIA)[number]

/** One battery: which modules stand where, and what that comes to. */
export type PackArrangement = {
  readonly strings: number
  readonly modules: number
  /** Modules of each form in each string, where there are two. */
  readonly inString?: { readonly main: number; readonly other: number }
  readonly boxes: readonly PackedBox[]
  /** Energy [J]. */
  readonly energy: number
  /** Modules and boxes [kg]. */
  readonly mass: number
  /** What each axle may still carry; negative when it carries too much [kg]. */
  readonly frontMargin: number
  readonly rearMargin: number
  /** Height of the centre of mass of the battery above the ground [m]. */
  readonly height: number
  /** The shortest way through the centres of the boxes, straight from one to the next [m]. */
  readonly cable: number
  /** What no other arrangement does better. */
  readonly bestIn: readonly Criterion[]
}

export type PackAnswer = {
  /** Different arrangements, none of them worse than another in every respect: most energy first, then the widest margin of the axles. */
  readonly arrangements: readonly PackArrangement[]
  /** What bound, gap and spaces count: left out, modules; with two forms the cell groups in them, one module's after the other's. */
  readonly counts?: 'cell groups'
  /** Modules in whole strings that no arrangement in these boxes passes. Without end until every space has been looked at. */
  readonly bound: number
  /** Modules between the fullest arrangement and the bound. */
  readonly gap: number
  /** How far each space is: most modules placed, and never more than. */
  readonly spaces: readonly { readonly name: string; readonly found: number; readonly bound: number }[]
  readonly seed: number
  readonly steps: number
}
