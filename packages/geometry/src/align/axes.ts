import { cross, type Vector, times } from '@ampwright/engine'
import type { Placement } from './placement.ts'

/** An axis of a file, either way along. */
export const FILE_AXES = {
  x: [1, 0, 0],
  '-x': [-1, 0, 0],
  y: [0, 1, 0],
  '-y': [0, -1, 0],
  z: [0, 0, 1],
  '-z': [0, 0, -1],
} as const satisfies Readonly<Record<string, Vector>>
export type FileAxis = keyof typeof FILE_AXES

/** What a person says of a file: its unit, which of its axes point up and rearwards in the car, and whether left and right are exchanged. */
export type FileAxes = { readonly scale: number; readonly up: FileAxis; readonly rear: FileAxis; readonly mirrored?: boolean }

/** The placement that axes and unit alone give; the origin stays. Undefined where both axes lie along the same line. */
export function byAxes({ scale, up, rear, mirrored = false }: FileAxes): Placement | undefined {
  const [z, x] = [FILE_AXES[up], FILE_AXES[rear]]
  if (up.at(-1) === rear.at(-1)) return undefined
  // x rearwards, y to the right and z up are right-handed, so that y = z × x.
  const right = cross(z, x)
  return { scale, turn: [x, mirrored ? times(right, -1) : right, z], shift: [0, 0, 0] }
}
