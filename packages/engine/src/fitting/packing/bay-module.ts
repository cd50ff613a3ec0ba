import type { AlignedBox } from '../box.ts'
import type { Vector } from '../vector.ts'

/** Faces of a module in its own axes: front and back are its ends along x, left and right along y, bottom and top along z. */
export type ModuleFace = 'front' | 'back' | 'left' | 'right' | 'bottom' | 'top'
export const MODULE_FACES: readonly ModuleFace[] = ['front', 'back', 'left', 'right', 'bottom', 'top']

/** Faces a module may lie on, by how the file says it. */
export const MODULES_LIE = {
  upright: ['bottom'],
  'upright or on a long side': ['bottom', 'left', 'right'],
  'any way but on its head': ['bottom', 'left', 'right', 'front', 'back'],
  'any way': ['bottom', 'left', 'right', 'front', 'back', 'top'],
} as const satisfies Readonly<Record<string, readonly ModuleFace[]>>
export type ModulesLie = keyof typeof MODULES_LIE

/** A battery module as a bay takes it. */
export type BayModule = {
  /** Its three sides in its own axes [m]. */
  readonly size: Vector
  /** Air between two modules, at least [m]. */
  readonly clearance: number
  /** Faces it may lie on. */
  readonly down: readonly ModuleFace[]
  /** The face that must be reached, and how deep the room before it stays free of modules and of the car [m]. Two modules may share that room. */
  readonly service?: { readonly face: ModuleFace; readonly strip: number }
}

/** One way round: sides along the axes of the car, and along which axis, to which end, the service face looks. */
export type Turn = { readonly down: ModuleFace; readonly sides: Vector; readonly looks?: { readonly axis: 0 | 1 | 2; readonly end: 0 | 1 } }

/** A module where it stands: its box, the face it lies on, and the room before its service face. */
export type PlacedModule = {
  readonly box: AlignedBox
  readonly down: ModuleFace
  readonly strip?: AlignedBox
  /** Of the other form, where two are packed together. */
  readonly other?: true
}

const axisOf = (face: ModuleFace): 0 | 1 | 2 => (face === 'front' || face === 'back' ? 0 : face === 'left' || face === 'right' ? 1 : 2)
const endOf = (face: ModuleFace): 0 | 1 => (face === 'back' || face === 'right' || face === 'top' ? 1 : 0)

/** The six ways three axes can be put in order, and whether each is a rotation without a mirror. */
const ORDERS: readonly (readonly [order: readonly [0 | 1 | 2, 0 | 1 | 2, 0 | 1 | 2], even: boolean])[] = [
  [[0, 1, 2], true],
  [[1, 2, 0], true],
  [[2, 0, 1], true],
  [[0, 2, 1], false],
  [[2, 1, 0], false],
  [[1, 0, 2], false],
]

/** The ways round that differ in sides or in where the service face looks, of the 24 there are. */
export function turnsOfModule({ size, down, service }: BayModule): readonly Turn[] {
  const out: Turn[] = [],
    seen = new Set<string>()
  for (const [order, even] of ORDERS)
    for (let flips = 0; flips < 8; flips++) {
      const flipped = [flips & 1, (flips >> 1) & 1, (flips >> 2) & 1] as const
      if (((flipped[0] + flipped[1] + flipped[2]) % 2 === 0) !== even) continue
      // Axis i of the car carries axis order[i] of the module, turned round where flipped.
      const looks = (face: ModuleFace): { axis: 0 | 1 | 2; end: 0 | 1 } => {
        const axis = order.indexOf(axisOf(face)) as 0 | 1 | 2
        return { axis, end: (endOf(face) ^ (flipped[axis] as number)) as 0 | 1 }
      }
      const lies = down.find(face => looks(face).axis === 2 && looks(face).end === 0)
      if (!lies) continue
      const sides: Vector = [size[order[0]], size[order[1]], size[order[2]]],
        to = service && looks(service.face),
        key = `${sides};${to?.axis}${to?.end}`
      if (seen.has(key)) continue
      seen.add(key)
      out.push({ down: lies, sides, ...(to ? { looks: to } : {}) })
    }
  return out
}

/** The room before the service face of a module. */
export function stripOf(box: AlignedBox, { looks }: Turn, { service }: BayModule): AlignedBox | undefined {
  if (!looks || !service || service.strip <= 0) return undefined
  const low: [number, number, number] = [...box.low],
    high: [number, number, number] = [...box.high]
  if (looks.end === 1) {
    low[looks.axis] = box.high[looks.axis]
    high[looks.axis] = box.high[looks.axis] + service.strip
  } else {
    low[looks.axis] = box.low[looks.axis] - service.strip
    high[looks.axis] = box.low[looks.axis]
  }
  return { low, high }
}
