import { bodyEnds, boxOf } from '../../fitting/placed-body.ts'
import type { OrientedBox } from '../../fitting/box.ts'
import type { Body } from '../../model/fit.ts'
import type { Model } from '../../model/model.ts'
import { type Field, type Figure, type Gap, isGap, standard, type Value } from '../../working/value.ts'
import { type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'

/** Three values in the order of the axes, or of length, width and height. */
export type Three = readonly [Value, Value, Value]
export type Ends = { readonly [K in keyof (typeof bodyEnds)['card']['gives']]: Figure }
/** A mesh that stands for a shape: its file beside the conversion, the fingerprint of that, and its unit where it is said. */
export type ShapeMesh = { readonly file: string; readonly mark: string; readonly unit?: 'mm' | 'cm' | 'm' | 'in' | 'ft' }
export type PlacedShape = {
  readonly name: string
  readonly kind: Body['kind']
  readonly place: Three
  readonly sides: Three
  readonly turns: Three
  readonly box: OrientedBox
  readonly ends: Ends
  readonly mesh?: ShapeMesh
}

/** What a shape whose turns are not stated stands at. */
export const SQUARE_TO_CAR = standard('square-to-the-car', 'square to the car', 'θ_0', 0, 'rad', {
  work: 'definition',
  place: 'a shape without turns stands square to the car',
})
const turnOf = (f: Field): Value => (isGap(f) ? SQUARE_TO_CAR : f)
const missing = (path: string, label: string): Gap => ({ gap: true, path, label, until: 'any time' })

/** A place is looked for, not guessed: what a class table would put there draws no shape. */
const stated = (f: Field): Field => (!isGap(f) && f.origin?.how === 'assumed' ? missing(f.path, f.label) : f)

type Middle = { readonly x: Field; readonly y: Field; readonly z: Field }
/** Where the mass of what a shape stands for is listed, or the gap that names it. */
export function middleOf(m: Model, body: Body): Middle | Gap {
  const lost = (f: Field<string>, what: string): Gap => (isGap(f) ? f : missing(f.path, what))
  switch (body.kind) {
    case 'motor':
      return (isGap(body.unit) ? undefined : m.drive.units[body.unit.value]?.motor) ?? lost(body.unit, 'drive unit of the shape')
    case 'inverter':
      return (isGap(body.unit) ? undefined : m.drive.units[body.unit.value]?.inverter) ?? lost(body.unit, 'drive unit of the shape')
    case 'battery box':
      return (isGap(body.box) ? undefined : m.pack.boxes[body.box.value]) ?? lost(body.box, 'battery box of the shape')
    case 'part put in':
      return (isGap(body.part) ? undefined : m.donor.added[body.part.value]) ?? lost(body.part, 'part of the shape')
    case 'on-board charger':
      return m.charging.charger
    case 'AC inlet':
      return m.charging.inlet
    default:
      return body
  }
}

/** Mass of what a shape stands for, as it is listed; of a battery box, its box without modules stands there, so the ledger tells. */
export function massOf(m: Model, b: Body): Field | Gaps {
  if (b.kind === 'motor') return (isGap(b.unit) ? undefined : m.drive.units[b.unit.value]?.motor.mass) ?? { gaps: [] }
  if (b.kind === 'inverter') return (isGap(b.unit) ? undefined : m.drive.units[b.unit.value]?.inverter.mass) ?? { gaps: [] }
  if (b.kind === 'part put in') return (isGap(b.part) ? undefined : m.donor.added[b.part.value]?.mass) ?? { gaps: [] }
  if (b.kind === 'on-board charger') return m.charging.charger.mass
  if (b.kind === 'AC inlet') return m.charging.inlet.mass
  return { gaps: [] }
}

/** Sides of a shape; a motor that states none is as long and as thick as its own group says, lying along the car. */
function sidesOf(m: Model, b: Body): { readonly [K in 'length' | 'width' | 'height']: Field | Gaps } {
  const motor = b.kind === 'motor' && !isGap(b.unit) ? m.drive.units[b.unit.value]?.motor : undefined
  if (!motor) return { length: b.length, width: b.width, height: b.height }
  // Either will do: where both are missing, both are named.
  const or = (own: Field, listed: Field): Field | Gaps => (!isGap(own) ? own : isGap(listed) ? { gaps: [own, listed] } : listed)
  return { length: or(b.length, motor.length), width: or(b.width, motor.diameter), height: or(b.height, motor.diameter) }
}

function meshOf({ mesh, meshUnit }: Body): ShapeMesh | null {
  if (isGap(mesh)) return null
  return { file: mesh.text ?? '', mark: mesh.value, ...(isGap(meshUnit) ? {} : { unit: meshUnit.value }) }
}

/** Shapes of the file that say their kind, by name in an order that does not hang on the file. */
export const shapesOf = (m: Model): readonly (readonly [string, Body])[] =>
  Object.entries(m.fit.bodies)
    .flatMap(([name, b]): [string, Body][] => (b ? [[name, b]] : []))
    .sort(([a], [b]) => (a < b ? -1 : 1))

/** Every shape as it stands in the car. */
export const places = study({
  id: 'place',
  stage: 'fit',
  asks: 'Where does everything stand, and how far does it reach?',
  reads: m => {
    const shapes = shapesOf(m)
    return {
      names: shapes.map(([name]) => name),
      kinds: shapes.map(([, b]) => b.kind),
      shapes: shapes.map(([, b]) => {
        const at = middleOf(m, b)
        return maybe({
          place: isGap(at) ? at : { x: stated(at.x), y: stated(at.y), z: stated(at.z) },
          sides: sidesOf(m, b),
          turns: { turn: turnOf(b.turn), tip: turnOf(b.tip), lean: turnOf(b.lean) },
        })
      }),
      masses: shapes.map(([, b]) => maybe(massOf(m, b))),
      meshes: shapes.map(([, b]) => meshOf(b)),
    }
  },
  answer: ({ names, kinds, shapes, masses, meshes }, make): { shapes: Readonly<Record<string, PlacedShape | Gaps>> } => {
    const out = Object.fromEntries(
      shapes.map((s, i): [string, PlacedShape | Gaps] => {
        const name = names[i] as string
        if (isGaps(s)) return [name, s]
        const { x, y, z } = s.place as { x: Value; y: Value; z: Value },
          { length, width, height } = s.sides,
          { turn, tip, lean } = s.turns,
          mesh = meshes[i] as ShapeMesh | null,
          shape = placed(make, name, kinds[i] as Body['kind'], [x, y, z], [length, width, height], [turn, tip, lean])
        return [name, mesh ? { ...shape, mesh } : shape]
      }),
    )
    table(make, names, out, masses)
    return { shapes: out }
  },
})

const numbers = (three: Three): readonly number[] => three.map(v => v.value)
function placed(make: Maker, name: string, kind: Body['kind'], place: Three, sides: Three, turns: Three): PlacedShape {
  const labels = {
    front: `${name}: front end`,
    rear: `${name}: rear end`,
    left: `${name}: left end`,
    right: `${name}: right end`,
    bottom: `${name}: lowest point`,
    top: `${name}: highest point`,
  }
  const { figures } = make.all('', bodyEnds, { place, sides, turns }, { item: name, labels })
  return {
    name,
    kind,
    place,
    sides,
    turns,
    box: boxOf({ place: numbers(place), sides: numbers(sides), turns: numbers(turns) }),
    ends: figures,
  }
}

/** What drawings of the car are made from. */
function table(
  make: Maker,
  names: readonly string[],
  shapes: Readonly<Record<string, PlacedShape | Gaps>>,
  masses: readonly (Value | Gaps)[],
): void {
  make.table('shapes', {
    label: 'Where everything stands',
    columns: [
      { key: 'kind', label: 'kind' },
      { key: 'x', label: 'x', unit: 'm', shows: 'length' },
      { key: 'y', label: 'y', unit: 'm', shows: 'length' },
      { key: 'z', label: 'z', unit: 'm', shows: 'length' },
      { key: 'length', label: 'length', unit: 'm', shows: 'length' },
      { key: 'width', label: 'width', unit: 'm', shows: 'length' },
      { key: 'height', label: 'height', unit: 'm', shows: 'length' },
      { key: 'turn', label: 'turned', unit: 'rad', shows: 'angle' },
      { key: 'tip', label: 'tipped', unit: 'rad', shows: 'angle' },
      { key: 'lean', label: 'leant', unit: 'rad', shows: 'angle' },
      { key: 'mass', label: 'mass', unit: 'kg' },
    ],
    rows: names.flatMap((name, i) => {
      const s = shapes[name]
      if (!s || isGaps(s)) return []
      const {
          kind,
          place: [x, y, z],
          sides: [length, width, height],
          turns: [turn, tip, lean],
        } = s,
        mass = masses[i] as Value | Gaps
      return [{ name, cells: { kind, x, y, z, length, width, height, turn, tip, lean, mass: isGaps(mass) ? undefined : mass } }]
    }),
  })
}
