import { type Assessment, boxOf, type Finding, type OrientedBox, type Table, type Vector } from '@ampwright/engine'
import { numberIn, wordsIn } from '../charts/cells.ts'
import type { Outcome } from '../picture.ts'

/** A shape in the car: what it is, where it stands, and the worst that is found of it. */
export type SceneBody = {
  readonly name: string
  readonly kind: string
  readonly box: OrientedBox
  readonly outcome: Outcome
  readonly mass: number | undefined
  /** Where its place stands in the file, along, across and up; undefined where it is no fact of the file. */
  readonly at: readonly [string, string, string] | undefined
}
/** A room square to the car: a space, or one that is kept free. */
export type SceneRoom = {
  readonly name: string
  readonly kind: string
  readonly low: Vector
  readonly high: Vector
  /** Corners of its walls seen from above, where they do not stand square. */
  readonly outline?: readonly (readonly [x: number, y: number])[]
}
export type SceneShaft = { readonly name: string; readonly from: Vector; readonly to: Vector; readonly radius: number }
/** What cuts the power. */
export type SceneHandle = { readonly name: string; readonly kind: string; readonly at: Vector; readonly outcome: Outcome }
export type SceneWheel = { readonly centre: Vector; readonly radius: number; readonly width: number }
/** Everything drawings of the car are made from: plain data in metres, x behind the front axle, y to the right, z above the ground. */
export type Scene = {
  readonly bodies: readonly SceneBody[]
  readonly spaces: readonly SceneRoom[]
  readonly kept: readonly SceneRoom[]
  readonly shafts: readonly SceneShaft[]
  readonly wheels: readonly SceneWheel[]
  /** Foremost and rearmost point, width and height of the car, where they are known. */
  readonly car: { readonly front: number; readonly rear: number; readonly width: number; readonly height: number } | undefined
  /** Outline of the car seen from the side, where it was measured. */
  readonly profile: readonly (readonly [x: number, z: number])[] | undefined
  readonly handles: readonly SceneHandle[]
  readonly centreOfMass: Vector | undefined
}
type Known = Pick<Assessment, 'figures' | 'tables' | 'findings'>
type Cells = Table['rows'][number]['cells']

/** The scene of an assessment; undefined where nothing has a shape. */
export function sceneOf(a: Known): Scene | undefined {
  const bodies = rowsOf(a, 'place.shapes').flatMap(({ name, cells }) => bodyOf(a, name, cells))
  if (bodies.length === 0) return undefined
  const [car] = rowsOf(a, 'rooms.car').flatMap(({ cells }) => {
    const n = numbersIn(cells, ['front', 'rear', 'width', 'height'])
    return n ? [{ front: n[0] as number, rear: n[1] as number, width: n[2] as number, height: n[3] as number }] : []
  })
  return {
    bodies,
    spaces: rowsOf(a, 'rooms.spaces')
      .flatMap(roomOf)
      .map(r => ({ ...r, ...wallsOf(a, r.name) })),
    kept: rowsOf(a, 'rooms.kept-free').flatMap(roomOf),
    shafts: rowsOf(a, 'rooms.shafts').flatMap(shaftOf),
    wheels: rowsOf(a, 'rooms.axles').flatMap(wheelsOf),
    car,
    profile: profileOf(a),
    handles: rowsOf(a, 'reach.handles').flatMap(({ name, cells }) => {
      const n = numbersIn(cells, ['x', 'y', 'z'])
      return n
        ? [{ name, kind: wordsIn(cells['kind']), at: n as unknown as Vector, outcome: worstOf(a.findings, `fit.handles.${name}`) }]
        : []
    }),
    centreOfMass: centreOf(a),
  }
}

const rowsOf = (a: Known, id: string): Table['rows'] => a.tables.get(id)?.rows ?? []
function numbersIn(cells: Cells, keys: readonly string[]): readonly number[] | undefined {
  const all = keys.map(k => numberIn(cells[k]))
  return all.every(n => n !== undefined) ? (all as number[]) : undefined
}

function bodyOf(a: Known, name: string, cells: Cells): readonly SceneBody[] {
  const n = numbersIn(cells, ['x', 'y', 'z', 'length', 'width', 'height', 'turn', 'tip', 'lean'])
  if (!n) return []
  const box = boxOf({ place: n.slice(0, 3), sides: n.slice(3, 6), turns: n.slice(6, 9) })
  const at = ['x', 'y', 'z'].map(k => pathIn(cells[k])),
    listed = /^pack\.boxes\.(.+)\.x$/.exec(at[0] ?? '')?.[1]
  return [
    {
      name,
      kind: wordsIn(cells['kind']),
      box,
      outcome: worstOf(a.findings, `fit.bodies.${name}`),
      mass: listed === undefined ? numberIn(cells['mass']) : a.figures.get(`ledger.box@${listed}`)?.value,
      at: at.every(p => p !== undefined) ? (at as unknown as SceneBody['at']) : undefined,
    },
  ]
}
const pathIn = (cell: Cells[string]): string | undefined => (typeof cell === 'object' && 'path' in cell ? cell.path : undefined)
const WORST: readonly Outcome[] = ['failing', 'unanswered', 'marginal', 'accepted']
function worstOf(findings: readonly Finding[], path: string): Outcome {
  const about = findings.filter(f => f.stage === 'fit' && f.about.some(p => p === path || p.startsWith(`${path}.`)))
  return WORST.find(outcome => about.some(f => f.outcome === outcome)) ?? 'sound'
}
function roomOf({ name, cells }: Table['rows'][number]): readonly SceneRoom[] {
  const n = numbersIn(cells, ['front', 'left', 'bottom', 'rear', 'right', 'top'])
  if (!n) return []
  const [x1, y1, z1, x2, y2, z2] = n as [number, number, number, number, number, number]
  return [{ name, kind: wordsIn(cells['kind']), low: [x1, y1, z1], high: [x2, y2, z2] }]
}
function wallsOf(a: Known, space: string): Pick<SceneRoom, 'outline'> {
  const outline = rowsOf(a, 'rooms.outlines')
    .filter(({ cells }) => wordsIn(cells['kind']) === space)
    .flatMap(({ cells }): (readonly [number, number])[] => {
      const n = numbersIn(cells, ['x', 'y'])
      return n ? [[n[0] as number, n[1] as number]] : []
    })
  return outline.length > 2 ? { outline } : {}
}
function profileOf(a: Known): Scene['profile'] {
  const corners = rowsOf(a, 'rooms.profile').flatMap(({ cells }): (readonly [number, number])[] => {
    const n = numbersIn(cells, ['x', 'z'])
    return n ? [[n[0] as number, n[1] as number]] : []
  })
  return corners.length > 2 ? corners : undefined
}
function shaftOf({ name, cells }: Table['rows'][number]): readonly SceneShaft[] {
  const n = numbersIn(cells, ['fromX', 'fromY', 'fromZ', 'toX', 'toY', 'toZ', 'diameter'])
  if (!n) return []
  const [a, b, c, d, e, f, diameter] = n as [number, number, number, number, number, number, number]
  return [{ name, from: [a, b, c], to: [d, e, f], radius: diameter / 2 }]
}
function wheelsOf({ cells }: Table['rows'][number]): readonly SceneWheel[] {
  const n = numbersIn(cells, ['x', 'track', 'diameter', 'width', 'height'])
  if (!n) return []
  const [x, track, diameter, width, height] = n as [number, number, number, number, number]
  return [-1, 1].map(side => ({ centre: [x, (side * track) / 2, height], radius: diameter / 2, width }))
}
function centreOf(a: Known): Vector | undefined {
  const x = a.figures.get('ledger.centre-x')?.value,
    z = a.figures.get('stance.height')?.value,
    y = a.figures.get('side.shift')?.value
  return x === undefined || z === undefined ? undefined : [x, y ?? 0, z]
}
