import { type OrientedBox, SQUARE } from '../../fitting/box.ts'
import { airInSpace, bodyToRoom, FACES, type Face, freeBeforeFace, gapBelow } from '../../fitting/placed-body.ts'
import type { Vector } from '../../fitting/vector.ts'
import { airToOutline } from '../../fitting/slanted-walls.ts'
import { shaftToBody } from '../../fitting/tube-to-box.ts'
import type { BlockKind } from '../../model/fit.ts'
import type { Model } from '../../model/model.ts'
import type { SurveyedMeshes } from '../../model/survey.ts'
import { type Figure, isGap, type Value } from '../../working/value.ts'
import { type Ask, from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { type FreeRoom, type FreeShaft, keptFreeOf, readsOf } from './kept-free.ts'
import { cornersOf } from './outlines.ts'
import { airOfPairs } from './pairs.ts'
import { type PlacedShape, places, shapesOf } from './places.ts'

/** Something kept free, and the shape that comes nearest to it. */
export type Beside = { readonly name: string; readonly kind: BlockKind | 'shaft'; readonly shape: PlacedShape; readonly gap: Figure }
/** Free depth before a face of a shape, and what stands there. */
export type Before = {
  readonly shape: PlacedShape
  readonly face: Face
  readonly wanted: Value
  readonly other: PlacedShape
  readonly free: Figure
}
export type Inside = {
  readonly shape: PlacedShape
  readonly space: string
  readonly air: Figure
  /** Air to walls that do not stand square, where they are measured. */
  readonly walls: Figure | undefined
}

const shapesAsked = (m: Model, ask: Ask) => {
  const answer = ask(places)
  return shapesOf(m).map(([name]) => maybe({ shape: from(answer, a => a.shapes[name] as PlacedShape | Gaps) }))
}

/** Air between what goes in, to what must stay free, round it in its space, and before the faces that are reached. */
export const gaps = study({
  id: 'gap',
  stage: 'fit',
  asks: 'How much air is there between the parts, and to what must stay free?',
  reads: (m, ask) => ({
    shapes: shapesAsked(m, ask),
    meshes: m.meshes,
    kept: keptFreeOf(m).map(([name, k]) => ({ name, kind: k.kind, is: maybe(readsOf(k)) })),
    rooms: shapesOf(m).map(([name, b]) => ({
      name,
      faces: FACES.flatMap(face => (isGap(b.room[face]) ? [] : [{ face, wanted: b.room[face] }])),
    })),
    spaces: shapesOf(m).map(([name, b]) => {
      const space = isGap(b.space) ? undefined : m.fit.spaces[b.space.value]
      const outline = space ? cornersOf(space) : []
      return {
        name,
        space: isGap(b.space) ? '' : b.space.value,
        ends: space ? maybe(endsOf(space)) : null,
        walls: outline.length > 0 ? maybe(outline.map(([, { x, y }]) => ({ x, y }))) : null,
      }
    }),
  }),
  answer: (known, make) => {
    const all = known.shapes.flatMap(s => (isGaps(s) ? [] : [s.shape as PlacedShape]))
    const shape = (name: string): PlacedShape | undefined => all.find(s => s.name === name)
    return {
      pairs: airOfPairs(make, all, known.meshes as SurveyedMeshes | undefined),
      beside: known.kept.flatMap(k =>
        isGaps(k.is) ? [] : nearestTo(make, k.name, k.kind as Beside['kind'], k.is as FreeRoom | FreeShaft, all),
      ),
      before: known.rooms.flatMap(({ name, faces }) => {
        const one = shape(name)
        return one ? faces.flatMap(({ face, wanted }) => beforeFace(make, one, face, wanted as Value, all)) : []
      }),
      inside: known.spaces.flatMap(({ name, space, ends, walls }): Inside[] => {
        const one = shape(name)
        if (!one || ends === null || isGaps(ends)) return []
        const air = make.work('inside', airInSpace, { ...one.ends, ...ends }, { item: name, label: `Air round ${name} in ${space}` })
        return [
          {
            shape: one,
            space,
            air,
            walls: walls === null || isGaps(walls) ? undefined : toWalls(make, one, space, walls as readonly Corner[]),
          },
        ]
      }),
    }
  },
})

type Corner = { readonly x: Value; readonly y: Value }
/** Fewer corners than these enclose nothing. */
const RING = 3
function toWalls(make: Maker, { name, place, sides, turns }: PlacedShape, space: string, walls: readonly Corner[]): Figure | undefined {
  if (walls.length < RING) return undefined
  return make.work(
    'walls',
    airToOutline,
    { cornersX: walls.map(w => w.x), cornersY: walls.map(w => w.y), place, sides, turns },
    { item: name, label: `Air from ${name} to the walls of ${space}` },
  )
}

const endsOf = (s: Model['fit']['spaces'][string]) => ({
  spaceFront: s.front,
  spaceRear: s.rear,
  spaceLeft: s.left,
  spaceRight: s.right,
  spaceBottom: s.bottom,
  spaceTop: s.top,
})

function nearestTo(
  make: Maker,
  name: string,
  kind: Beside['kind'],
  free: FreeRoom | FreeShaft,
  all: readonly PlacedShape[],
): readonly Beside[] {
  const around = roundOf(free),
    moving = all.filter(s => s.kind !== 'stays in the car')
  const nearest = moving.reduce<{ shape: PlacedShape; plain: number } | undefined>((best, shape) => {
    // What encloses all of its travel is nearer than it is: who is no nearer to that is no nearer to it.
    const limit = best?.plain ?? Infinity
    if (gapBelow(around, shape.box, limit) >= limit) return best
    const plain = gapTo(free, shape)
    return plain < limit ? { shape, plain } : best
  }, undefined)
  if (!nearest) return []
  const { shape } = nearest,
    body = { place: shape.place, sides: shape.sides, turns: shape.turns },
    label = `Air between ${name} and ${shape.name}`
  const gap =
    free.is === 'room'
      ? make.work('kept', bodyToRoom, { low: free.low, high: free.high, ...body }, { item: name, label })
      : make.all(
          'kept',
          shaftToBody,
          { from: free.from, to: free.to, diameter: free.diameter, bump: free.bump, droop: free.droop, ...body },
          { item: name, labels: { gap: label, at: `${name}: outer joint up by, where air is least` } },
        ).figures.gap
  return [{ name, kind, shape, gap }]
}

const numbersOf = (three: readonly Value[]): readonly number[] => three.map(v => v.value)
const plainOf = (s: PlacedShape) => ({ place: numbersOf(s.place), sides: numbersOf(s.sides), turns: numbersOf(s.turns) })
function gapTo(free: FreeRoom | FreeShaft, s: PlacedShape): number {
  if (free.is === 'room') return bodyToRoom({ low: numbersOf(free.low), high: numbersOf(free.high), ...plainOf(s) })
  const { diameter, bump, droop } = free
  return shaftToBody({
    from: numbersOf(free.from),
    to: numbersOf(free.to),
    diameter: diameter.value,
    bump: bump.value,
    droop: droop.value,
    ...plainOf(s),
  }).gap
}
/** A box square to the car round all a thing kept free reaches. */
function roundOf(free: FreeRoom | FreeShaft): OrientedBox {
  const [a, b] = (free.is === 'room' ? [free.low, free.high] : [free.from, free.to]).map(numbersOf) as [
      readonly number[],
      readonly number[],
    ],
    out = free.is === 'room' ? 0 : free.diameter.value / 2,
    [up, down] = free.is === 'room' ? [0, 0] : [free.bump.value, free.droop.value]
  const low = [0, 1, 2].map(i => Math.min(a[i] as number, b[i] as number) - out - (i === 2 ? down : 0)),
    high = [0, 1, 2].map(i => Math.max(a[i] as number, b[i] as number) + out + (i === 2 ? up : 0))
  const of = (f: (i: 0 | 1 | 2) => number): Vector => [f(0), f(1), f(2)]
  return {
    centre: of(i => ((low[i] as number) + (high[i] as number)) / 2),
    half: of(i => ((high[i] as number) - (low[i] as number)) / 2),
    axes: SQUARE,
  }
}

function beforeFace(make: Maker, shape: PlacedShape, face: Face, wanted: Value, all: readonly PlacedShape[]): readonly Before[] {
  const one = plainOf(shape)
  const free = (other: PlacedShape): number => {
    const o = plainOf(other)
    return freeBeforeFace({
      face,
      wanted: wanted.value,
      place1: one.place,
      sides1: one.sides,
      turns1: one.turns,
      place2: o.place,
      sides2: o.sides,
      turns2: o.turns,
    })
  }
  const others = all.filter(s => s !== shape).map(other => ({ other, free: free(other), gap: gapBelow(shape.box, other.box, 0) }))
  const worst = others.reduce<(typeof others)[number] | undefined>(
    (a, b) => (a === undefined || b.free < a.free || (b.free === a.free && b.gap < a.gap) ? b : a),
    undefined,
  )
  if (!worst) return []
  const { other } = worst
  const figure = make.work(
    'room',
    freeBeforeFace,
    {
      face: faceWord(face),
      wanted,
      place1: shape.place,
      sides1: shape.sides,
      turns1: shape.turns,
      place2: other.place,
      sides2: other.sides,
      turns2: other.turns,
    },
    { item: `${shape.name} ${face}`, label: `Free before the ${face} of ${shape.name}` },
  )
  return [{ shape, face, wanted, other, free: figure }]
}

/** Which face is meant, as a word a working can show. */
export const faceWord = (face: Face): Value<Face> => ({
  path: `standard.face.${face}`,
  label: 'face',
  symbol: '',
  unit: '',
  value: face,
  origin: { how: 'standard', source: { work: 'definition', place: 'faces of a body, named before it is turned' } },
})
