import { CLEARANCE_HABITS } from '../../fitting/clearance-habits.ts'
import { airRoundArm, depthOfHandle, shoulderToHandle } from '../../fitting/hand-reach.ts'
import { pieceToBox } from '../../fitting/tube-to-box.ts'
import { checkPlace, type Vector } from '../../fitting/vector.ts'
import type { Handle, OutsideHandle, Space, StraightWay } from '../../model/fit.ts'
import type { Model } from '../../model/model.ts'
import { type Field, type Figure, type Gap, isGap, type Value } from '../../working/value.ts'
import { from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { type PlacedShape, places, shapesOf, type Three } from './places.ts'

/** How far one handle is from whom it serves. */
export type Reach = {
  /** From the shoulder of the driver, or behind the opening the arm comes in through. */
  readonly far: Figure
  /** What comes nearest to an arm from outside. */
  readonly beside: { readonly what: string; readonly air: Figure } | undefined
}
export type Reaches = { readonly of: Readonly<Record<string, Reach | Gaps>> }

/** An arm with a thick glove, as the trade leaves room for it. */
export const [ROUND_ARM, ARM_IN] = [CLEARANCE_HABITS.roundArm, CLEARANCE_HABITS.armIn]

/** Handles of the file that say their kind, by name in an order that does not hang on the file. */
export const handlesOf = (m: Model): readonly (readonly [string, Handle])[] =>
  Object.entries(m.fit.handles)
    .flatMap(([name, h]): [string, Handle][] => (h ? [[name, h]] : []))
    .sort(([a], [b]) => (a < b ? -1 : 1))

/** Axis an arm reaches along, and the end of a space it comes in through. */
const WAYS: Readonly<Record<StraightWay, readonly [axis: 0 | 1 | 2, end: Exclude<keyof Space, 'outline' | 'kind' | 'at' | 'given'>]>> = {
  'from ahead': [0, 'front'],
  'from behind': [0, 'rear'],
  'from the left': [1, 'left'],
  'from the right': [1, 'right'],
  'from below': [2, 'bottom'],
  'from above': [2, 'top'],
}

/** Where the arm comes in, or what is missing to tell. */
function openingOf(m: Model, { space, reached }: OutsideHandle): Field | Gaps {
  if (isGap(space) || isGap(reached)) return { gaps: [space, reached].filter(isGap) }
  const s = m.fit.spaces[space.value]
  if (!s) return { gaps: [{ gap: true, path: space.path, label: 'space it is reached in', until: 'any time' } satisfies Gap] }
  return s[WAYS[reached.value][1]] as Field
}

/** The line of the arm that reaches a handle from outside, from the handle to the opening; undefined until both are known. */
export function armLine(m: Model, h: OutsideHandle): readonly [handle: Vector, opening: Vector] | undefined {
  const opening = openingOf(m, h)
  if (isGap(h.x) || isGap(h.y) || isGap(h.z) || isGap(h.reached) || isGaps(opening) || isGap(opening)) return undefined
  const handle: Vector = [h.x.value, h.y.value, h.z.value],
    axis = WAYS[h.reached.value][0]
  return [handle, handle.map((c, i) => (i === axis ? opening.value : c)) as unknown as Vector]
}

/** Who can cut the power, and how far each has to reach for it. */
export const reach = study({
  id: 'reach',
  stage: 'fit',
  asks: 'Can driver and rescuers reach what cuts the power?',
  reads: (m, ask) => {
    const answer = ask(places),
      { driver } = m.fit
    return {
      handles: handlesOf(m).map(([name, h]) => {
        const at = { x: h.x, y: h.y, z: h.z }
        return {
          name,
          kind: h.kind,
          partOf: isGap(h.partOf) ? null : h.partOf,
          at: maybe(at),
          way: h.kind === 'main switch of the driver' || isGap(h.reached) ? null : h.reached,
          is:
            h.kind === 'main switch of the driver'
              ? maybe({ ...at, to: { x: driver.x, y: driver.y, z: driver.z } })
              : maybe({ ...at, to: { opening: openingOf(m, h) } }),
        }
      }),
      shapes: shapesOf(m).map(([name]) => maybe({ shape: from(answer, a => a.shapes[name] as PlacedShape | Gaps) })),
    }
  },
  answer: ({ handles, shapes }, make): Reaches => {
    const all = shapes.flatMap(s => (isGaps(s) ? [] : [s.shape as PlacedShape]))
    const of = Object.fromEntries(
      handles.map(({ name, is, way, partOf }): [string, Reach | Gaps] => {
        if (isGaps(is)) return [name, is]
        const handle: Three = [is.x as Value, is.y as Value, is.z as Value],
          to = is.to as Readonly<Record<string, Value>>
        return [
          name,
          way === null
            ? { far: fromShoulder(make, name, handle, to), beside: undefined }
            : throughOpening(make, name, handle, to['opening'] as Value, (way as Value<StraightWay>).value, without(all, partOf)),
        ]
      }),
    )
    make.table('handles', {
      label: 'What cuts the power',
      columns: [
        { key: 'kind', label: 'what' },
        ...(['x', 'y', 'z'] as const).map(key => ({ key, label: key, unit: 'm', shows: 'length' }) as const),
        { key: 'way', label: 'reached' },
        { key: 'far', label: 'to reach', unit: 'm', shows: 'length' },
        { key: 'beside', label: 'nearest to the arm' },
        { key: 'air', label: 'from the line of the arm', unit: 'm', shows: 'length' },
      ],
      rows: handles.flatMap(({ name, kind, at, way }) => {
        if (isGaps(at)) return []
        const found = of[name] as Reach | Gaps,
          r = isGaps(found) ? undefined : found
        return [
          {
            name,
            cells: {
              kind,
              x: at.x as Value,
              y: at.y as Value,
              z: at.z as Value,
              way: way === null ? undefined : (way as Value<string>),
              far: r?.far,
              beside: r?.beside?.what,
              air: r?.beside?.air,
            },
          },
        ]
      }),
    })
    return { of }
  },
})

const without = (all: readonly PlacedShape[], partOf: unknown): readonly PlacedShape[] =>
  partOf === null ? all : all.filter(s => s.name !== (partOf as Value<string>).value)

const fromShoulder = (make: Maker, item: string, handle: Three, to: Readonly<Record<string, Value>>): Figure =>
  make.work(
    'from-shoulder',
    shoulderToHandle,
    { shoulder: [to['x'] as Value, to['y'] as Value, to['z'] as Value], handle },
    { item, label: `From the shoulder of the driver to ${item}` },
  )

const plain = (three: readonly Value[]): readonly number[] => three.map(v => v.value)
function throughOpening(make: Maker, item: string, handle: Three, opening: Value, way: StraightWay, shapes: readonly PlacedShape[]): Reach {
  const axis = WAYS[way][0],
    outer = handle.map((v, i) => (i === axis ? opening : v)) as unknown as Three,
    [from, to] = [checkPlace('arm', 'handle', plain(handle)), checkPlace('arm', 'opening', plain(outer))]
  const nearest = shapes
    .map(shape => ({ shape, air: pieceToBox(from, to, shape.box) }))
    .reduce<{ shape: PlacedShape; air: number } | undefined>((a, b) => (a === undefined || b.air < a.air ? b : a), undefined)
  const far = make.work(
    'depth',
    depthOfHandle,
    { handle: handle[axis], opening },
    { item, label: `${item}: how deep it lies, reached ${way}` },
  )
  if (!nearest) return { far, beside: undefined }
  const { name: what, place, sides, turns } = nearest.shape
  return {
    far,
    beside: {
      what,
      air: make.work(
        'round-arm',
        airRoundArm,
        { handle, opening: outer, place, sides, turns },
        { item, label: `${item}: from the line of the arm to ${what}` },
      ),
    },
  }
}
