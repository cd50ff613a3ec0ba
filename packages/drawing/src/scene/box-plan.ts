/** A place on the sheet: to the right, up. */
export type Flat = readonly [u: number, v: number]
export type PlanLine = { readonly from: Flat; readonly to: Flat; readonly is: 'outline' | 'hidden' | 'lid' | 'fixing' }
/** A length between two places of the sheet that lie level with, or over, each other. */
export type PlanSize = { readonly from: Flat; readonly to: Flat; readonly metres: number }
export type PlanWord = { readonly at: Flat; readonly text: string; readonly end: boolean }
/** Lines, sizes and words of a drawing to scale, in metres: what becomes a picture, or goes to a drawing program. */
export type Plan = {
  readonly width: number
  readonly height: number
  readonly lines: readonly PlanLine[]
  readonly sizes: readonly PlanSize[]
  readonly words: readonly PlanWord[]
}
/** A point a box is fixed at, m: behind its front end, to the right of its left side, above its underside. */
export type BoxPoint = { readonly back: number; readonly across: number; readonly up: number }
/** Outer sides and wall of a box, m, and where it is fixed, as far as that is known. */
export type BoxSizes = {
  readonly length: number
  readonly width: number
  readonly height: number
  readonly wall: number
  readonly points?: readonly BoxPoint[]
}
/** Half a cross that marks a point [m]. */
const CROSS = 0.006

/** How far the mark of a point reaches out of the box at most [m]. */
export const reachOut = ({ length, width, height, points = [] }: BoxSizes): number =>
  points.reduce((most, { back, across, up }) => {
    const out = Math.max(-back, back - length, -across, across - width, -up, up - height) + CROSS
    return Math.max(most, out)
  }, 0)

/** Three views of a box with its sizes: from its left, from above below it, from its rear beside it. `gap` is left between them, `off` to each size. */
export function boxPlan({ length, width, height, wall, points = [] }: BoxSizes, gap: number, off: number): Plan {
  const low = width + gap,
    beside = length + gap,
    top = low + height
  const upright = (at: Flat, across: number): readonly PlanLine[] => [
    ...frame(at, across, height, 'outline'),
    ...inside(at, across, height, wall),
    { from: [at[0], at[1] + height - wall], to: [at[0] + across, at[1] + height - wall], is: 'lid' },
  ]
  return {
    width: beside + width,
    height: top,
    lines: [
      ...upright([0, low], length),
      ...upright([beside, low], width),
      ...frame([0, 0], length, width, 'outline'),
      ...frame([wall, wall], length - 2 * wall, width - 2 * wall, 'hidden'),
      ...points.flatMap(({ back, across, up }) => [
        ...cross([back, low + up]),
        ...cross([beside + across, low + up]),
        ...cross([back, across]),
      ]),
    ],
    sizes: [
      { from: [0, top + off], to: [length, top + off], metres: length },
      { from: [-off, low], to: [-off, top], metres: height },
      { from: [-off, 0], to: [-off, width], metres: width },
    ],
    words: [
      { at: [0, low], text: 'from its left', end: false },
      { at: [beside + width, low], text: 'from its rear', end: true },
      { at: [0, 0], text: 'from above', end: false },
    ],
  }
}

const cross = ([u, v]: Flat): readonly PlanLine[] => [
  { from: [u - CROSS, v], to: [u + CROSS, v], is: 'fixing' },
  { from: [u, v - CROSS], to: [u, v + CROSS], is: 'fixing' },
]

function frame([u, v]: Flat, across: number, up: number, is: PlanLine['is']): readonly PlanLine[] {
  const corners: readonly Flat[] = [
    [u, v],
    [u + across, v],
    [u + across, v + up],
    [u, v + up],
  ]
  return corners.map((from, i) => ({ from, to: corners[(i + 1) % 4] as Flat, is }))
}
/** Inner faces of floor and sides, up to the lid. */
function inside([u, v]: Flat, across: number, up: number, wall: number): readonly PlanLine[] {
  const corners: readonly Flat[] = [
    [u + wall, v + up - wall],
    [u + wall, v + wall],
    [u + across - wall, v + wall],
    [u + across - wall, v + up - wall],
  ]
  return corners.slice(1).map((to, i) => ({ from: corners[i] as Flat, to, is: 'hidden' as const }))
}
