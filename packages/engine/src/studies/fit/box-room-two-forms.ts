import { modulesByVolume, modulesOneWay } from '../../fitting/packing/modules-in-box.ts'
import { insideOfBox, modulesBesideOthers, modulesByVolumeBesideOthers } from '../../fitting/packing/two-forms-in-box.ts'
import type { Figure, Value } from '../../working/value.ts'
import type { Maker } from '../study.ts'
import { type BoxKnown, type BoxWay, counted, NO_ROOM, waysInBox } from './box-ways.ts'

/** Modules of both forms a box is to take, how many of the main form go in beside the others, each form one way round, and how many of each at most. */
export type RoomForTwo = {
  readonly stated: Value
  readonly others: Value
  /** Of the other form, all the same way round and nothing beside them. */
  readonly othersOneWay: Figure
  readonly othersMost: Figure
  readonly beside: Figure
  readonly most: Figure
}

type Axis = 0 | 1 | 2
/** Which axis goes in from the end with the other form, and the two across it. */
const SPLITS: readonly (readonly [Axis, Axis, Axis])[] = [
  [0, 1, 2],
  [1, 0, 2],
  [2, 0, 1],
]
type Pair = { readonly main: BoxWay; readonly other: BoxWay; readonly split: readonly [Axis, Axis, Axis] }

const sidesOf = ({ along, across, up }: BoxWay): readonly Value[] => [along, across, up]
const beforeOf = ({ beforeAlong, beforeAcross, beforeUp }: BoxWay): readonly Value[] => [beforeAlong, beforeAcross, beforeUp]

/** Inputs for a pair of ways, beside the room inside. */
function besides({ main, other, split: [i, j, k] }: Pair, others: Value) {
  const at = (list: readonly Value[], axis: Axis): Value => list[axis] as Value,
    [b, e, a, f] = [sidesOf(other), beforeOf(other), sidesOf(main), beforeOf(main)] as const
  return {
    between: main.between,
    others,
    otherDepth: at(b, i),
    otherFirst: at(b, j),
    otherSecond: at(b, k),
    otherBeforeDepth: at(e, i),
    otherBeforeFirst: at(e, j),
    otherBeforeSecond: at(e, k),
    sideDepth: at(a, i),
    sideFirst: at(a, j),
    sideSecond: at(a, k),
    beforeDepth: at(f, i),
    beforeFirst: at(f, j),
    beforeSecond: at(f, k),
  }
}
const numbers = <K extends string>(x: Readonly<Record<K, Value>>): Record<K, number> =>
  Object.fromEntries(Object.entries<Value>(x).map(([key, v]) => [key, v.value])) as Record<K, number>

/** The room inside a box with its busbars where a way has them. */
const insides = (way: BoxWay) =>
  [
    { outer: way.length, wall: way.wall, low: way.ends, high: NO_ROOM },
    { outer: way.width, wall: way.wall, low: way.sides, high: NO_ROOM },
    { outer: way.height, wall: way.wall, low: way.plate, high: way.lid },
  ] as const

/** Whether modules of two forms have room in a box: the other form in slices at one end, the main one in what is left. */
export function roomForTwo(make: Maker, item: string, stated: Value, others: Value, main: BoxKnown, other: BoxKnown): RoomForTwo {
  const otherWays = waysInBox(other),
    bestOther = otherWays.reduce((most, way) => (counted(way) > counted(most) ? way : most)),
    fitting = otherWays.filter(way => counted(way) >= others.value)
  const pairs = (fitting.length ? fitting : [bestOther]).flatMap(o =>
    waysInBox(main)
      .filter(way => way.ends === o.ends && way.sides === o.sides)
      .flatMap(way => SPLITS.map((split): Pair => ({ main: way, other: o, split }))),
  )
  const beside = (pair: Pair): number => {
    const [depth, first, second] = pair.split.map((i: Axis) => insideOfBox(numbers(insides(pair.main)[i]))) as [number, number, number]
    return modulesBesideOthers({ ...numbers(besides(pair, others)), depth, first, second })
  }
  const best = pairs.map(pair => ({ pair, n: beside(pair) })).reduce((a, b) => (b.n > a.n ? b : a)).pair,
    named = ['along', 'across', 'upwards'] as const
  const inside = insides(best.main).map((x, i) =>
    make.work('inside', insideOfBox, x, { item: `${item} ${named[i]}`, label: `Room for modules in ${item}, ${named[i]}` }),
  )
  const [depth, first, second] = best.split.map(i => inside[i]) as [Figure, Figure, Figure]
  const { length, width, height, wall, plate, lid, along, across, up } = best.main,
    whole = [
      { outer: length, wall, low: NO_ROOM, high: NO_ROOM },
      { outer: width, wall, low: NO_ROOM, high: NO_ROOM },
      { outer: height, wall, low: plate, high: lid },
    ].map((x, i) =>
      make.work('inside-whole', insideOfBox, x, { item: `${item} ${named[i]}`, label: `Inside of ${item}, ${named[i]}` }),
    ) as [Figure, Figure, Figure]
  const o = best.other
  return {
    stated,
    others,
    othersOneWay: make.work('one-way', modulesOneWay, fitting.length ? o : bestOther, {
      item: `${item}, other form`,
      label: `Modules of the other form with room in ${item}, all the same way round`,
    }),
    othersMost: make.work(
      'by-volume',
      modulesByVolume,
      { length, width, height, wall, plate, lid, along: o.along, across: o.across, up: o.up },
      { item: `${item}, other form`, label: `Modules of the other form in ${item}, never more than` },
    ),
    beside: make.work(
      'beside',
      modulesBesideOthers,
      { ...besides(best, others), depth, first, second },
      { item, label: `Modules with room in ${item} beside those of the other form` },
    ),
    most: make.work(
      'by-volume',
      modulesByVolumeBesideOthers,
      {
        along: whole[0],
        across: whole[1],
        up: whole[2],
        length: along,
        width: across,
        height: up,
        others,
        otherLength: o.along,
        otherWidth: o.across,
        otherHeight: o.up,
      },
      { item, label: `Modules in ${item} beside those of the other form, never more than` },
    ),
  }
}
