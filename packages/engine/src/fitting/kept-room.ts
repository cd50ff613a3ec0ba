import { formula } from '../working/formula.ts'
import { checkPlace } from './vector.ts'

const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const angle = (symbol: string, label: string) => ({ symbol, unit: 'rad', label, shows: 'angle' }) as const
const hand = (place: string) => ({ work: 'statics', place: `worked by hand: ${place}` }) as const

/** How long, wide and high a room between six ends is. */
export const roomSize = formula(
  {
    id: 'room-size',
    label: 'Size of a room',
    gives: {
      length: length('ℓ', 'long'),
      width: length('w', 'wide'),
      height: length('h', 'high'),
      volume: { symbol: 'V', unit: 'm³', label: 'volume', shows: 'volume' },
    },
    takes: {
      front: length('x_1', 'front end'),
      rear: length('x_2', 'rear end'),
      left: length('y_1', 'left end'),
      right: length('y_2', 'right end'),
      bottom: length('z_1', 'bottom'),
      top: length('z_2', 'top'),
    },
    text: 'ℓ = x_2 − x_1\nw = y_2 − y_1\nh = z_2 − z_1\nV = ℓ · w · h',
    source: { work: 'definition', place: 'differences of ends' },
    leavesOut: 'A room whose walls slant or bulge: it is measured where it is narrowest.',
    proof: {
      examples: [
        {
          takes: { front: -0.5, rear: 0.5, left: -0.4, right: 0.4, bottom: 0.2, top: 0.7 },
          gives: { length: 1, width: 0.8, height: 0.5, volume: 0.4 },
          within: 1e-12,
          source: hand('1.0 by 0.8 by 0.5 m'),
        },
      ],
    },
  },
  ({ front, rear, left, right, bottom, top }) => {
    const length = rear - front,
      width = right - left,
      height = top - bottom
    return { length, width, height, volume: length * width * height }
  },
)

/** How long a shaft is and how far it leans while its outer joint goes up and down. */
export const shaftLine = formula(
  {
    id: 'shaft-line',
    label: 'Line of a shaft over its travel',
    gives: {
      length: length('ℓ', 'joint to joint, standing'),
      up: angle('θ_b', 'leans, joint up'),
      down: angle('θ_d', 'leans, joint down'),
    },
    takes: {
      from: { ...length('p_i', 'inner joint: behind the front axle, to the right, above the ground'), many: true },
      to: { ...length('p_o', 'outer joint, standing'), many: true },
      bump: length('t_b', 'outer joint goes up by'),
      droop: length('t_d', 'outer joint goes down by'),
    },
    text: 'ℓ is the distance of the joints; θ_b and θ_d are the angles of the shaft to the level with its outer joint up by t_b and down by t_d',
    words: 'places are lists of three',
    source: { work: 'statics', place: 'a straight shaft whose outer end moves' },
    proof: {
      examples: [
        {
          takes: { from: [0, 0.2, 0.3], to: [0, 0.62, 0.29], bump: 0.08, droop: 0.09 },
          gives: { up: (9.46 * Math.PI) / 180, down: (-13.39 * Math.PI) / 180 },
          within: 0.0001,
          source: hand('half-shaft of 420 mm, 80 mm up and 90 mm down: 9.46 and 13.39 degrees'),
        },
        {
          takes: { from: [0, 0, 0], to: [0.3, 0.4, 0], bump: 0, droop: 0 },
          gives: { length: 0.5, up: 0, down: 0 },
          within: 1e-12,
          source: hand('0.3 along and 0.4 across'),
        },
      ],
    },
  },
  ({ from, to, bump, droop }) => {
    const a = checkPlace('shaft', 'inner joint', from),
      b = checkPlace('shaft', 'outer joint', to),
      level = Math.hypot(b[0] - a[0], b[1] - a[1]),
      rise = b[2] - a[2]
    return { length: Math.hypot(level, rise), up: Math.atan2(rise + bump, level), down: Math.atan2(rise - droop, level) }
  },
)

const around = (symbol: string, label: string) => ({ ...length(symbol, label), many: true }) as const
/** Area inside an outline, from its corners and those that follow them round it. */
export const outlineArea = formula(
  {
    id: 'outline-area',
    label: 'Area inside an outline',
    gives: { symbol: 'A', unit: 'm²', label: 'area inside' },
    takes: {
      x: around('X', 'corners in order, along the sheet'),
      y: around('Y', 'corners in order, up the sheet'),
      nextX: around('X_n', 'the corner after each, along the sheet'),
      nextY: around('Y_n', 'the corner after each, up the sheet'),
    },
    text: 'A = abs(Σ X · Y_n − Σ X_n · Y) / 2',
    source: { work: 'definition', place: 'area of a polygon by its corners' },
    leavesOut: 'An outline that crosses itself: its corners are named in the wrong order.',
    proof: {
      examples: [
        {
          takes: { x: [0, 1, 1, 0], y: [-0.3, -0.5, 0.5, 0.3], nextX: [1, 1, 0, 0], nextY: [-0.5, 0.5, 0.3, -0.3] },
          gives: 0.8,
          within: 1e-12,
          source: hand('0.6 m wide in front, 1.0 m behind, 1.0 m long'),
        },
      ],
    },
  },
  ({ x, y, nextX, nextY }) => {
    let sum = 0
    x.forEach((at, i) => {
      sum += at * (nextY[i] as number) - (nextX[i] as number) * (y[i] as number)
    })
    return Math.abs(sum) / 2
  },
)
