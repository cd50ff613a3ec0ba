import type { Edit } from '@ampwright/conversion'
import { type Field, isGap, type Model, type PackArrangement, type PackedBox } from '@ampwright/engine'
import { boxesLeftOpen, handlesLeft } from '../handles-left.ts'
import type { ArrangingPlan, ArrangingRoom } from './plan.ts'

/** Half-width of what a box weighs beside its modules, as a share of it, until it is built (common practice). */
const SPREAD = 0.2
/** Words `where` of a battery box may be. */
const WHERE: ReadonlySet<string> = new Set(['engine bay', 'under floor', 'tank space', 'boot', 'cabin', 'tunnel'])

type Slot = { readonly box: string; readonly body: string; readonly isNew: boolean }

/**
 * The edits that put an arrangement into the file, to be made as one batch: battery boxes with their modules and places, their shapes, and the strings where they change. A box that stood in the same space keeps its
 * name and whatever else is said of it; boxes no longer needed are taken out. What a box weighs beside its modules is written as assumed.
 */
export function arrangementEdits(model: Model, plan: ArrangingPlan, arrangement: PackArrangement): readonly Edit[] {
  const slots = slotsFor(model, arrangement.boxes, plan.rooms),
    keptBoxes = new Set(slots.map(s => s.box)),
    keptBodies = new Set(slots.map(s => s.body))
  const gone = (map: string, names: readonly string[], kept: ReadonlySet<string>): readonly Edit[] =>
    names.filter(n => !kept.has(n)).map(n => ({ path: [...map.split('.'), n], now: null }))
  const { strings, modulesInSeries, otherModule } = model.pack,
    { inString } = arrangement
  const changed = (path: string, field: Field, to: number): readonly Edit[] =>
    !isGap(field) && field.value === to ? [] : [{ path, now: String(to) }]
  const bodies = boxBodies(model).map(([name]) => name)
  return [
    ...handlesLeft(
      model,
      bodies.filter(n => !keptBodies.has(n)),
    ),
    ...boxesLeftOpen(
      model,
      Object.keys(model.pack.boxes).filter(n => !keptBoxes.has(n)),
    ),
    ...gone('fit.bodies', bodies, keptBodies),
    ...gone('pack.boxes', Object.keys(model.pack.boxes), keptBoxes),
    ...arrangement.boxes.flatMap((box, i) => boxEdits(model, plan, box, slots[i] as Slot)),
    ...changed('pack.strings', strings, arrangement.strings),
    ...(inString
      ? [
          ...changed('pack.modules-in-series', modulesInSeries, inString.main),
          ...changed('pack.other-module.in-series', otherModule.inSeries, inString.other),
        ]
      : []),
  ]
}

const boxBodies = (m: Model) =>
  Object.entries(m.fit.bodies)
    .flatMap(([name, b]) => (b?.kind === 'battery box' ? [[name, b] as const] : []))
    .sort(([a], [b]) => (a < b ? -1 : 1))
const spaceOf = (rooms: readonly ArrangingRoom[], box: PackedBox): ArrangingRoom => rooms.find(r => r.name === box.space) as ArrangingRoom

/** Names for the boxes: those that stand in the same space first, then names after the space that are free. */
function slotsFor(m: Model, boxes: readonly PackedBox[], rooms: readonly ArrangingRoom[]): readonly Slot[] {
  const standing = boxBodies(m).flatMap(([body, b]) =>
    isGap(b.space) || isGap(b.box) || !Object.hasOwn(m.pack.boxes, b.box.value) ? [] : [{ body, box: b.box.value, space: b.space.value }],
  )
  const used = new Set<string>(),
    names = new Set([...Object.keys(m.pack.boxes), ...Object.keys(m.fit.bodies)])
  return boxes.map(packed => {
    const { space } = spaceOf(rooms, packed),
      old = standing.find(s => s.space === space && !used.has(s.box))
    if (old) {
      used.add(old.box)
      return { box: old.box, body: old.body, isNew: false }
    }
    const free = (base: string): string => {
      let name = base
      for (let n = 2; names.has(name); n++) name = `${base}-${n}`
      names.add(name)
      return name
    }
    return { box: free(space), body: free(`${space}-box`), isNew: true }
  })
}

const millimetres = (metres: number): string => `${Number((metres * 1000).toFixed(1))} mm`
/** Ends in whole millimetres, outwards: the box is never smaller than it was packed. */
const outward = (low: number, high: number): readonly [number, number] => [
  Math.floor(low * 1000 + 1e-6) / 1000,
  Math.ceil(high * 1000 - 1e-6) / 1000,
]

function boxEdits(m: Model, plan: ArrangingPlan, packed: PackedBox, slot: Slot): readonly Edit[] {
  const { low, high } = packed.outer,
    { kind, space } = spaceOf(plan.rooms, packed),
    { packing } = m.fit
  const ends = ([0, 1, 2] as const).map(i => outward(low[i], high[i])),
    middle = (i: 0 | 1 | 2): string => millimetres(((ends[i]?.[0] as number) + (ends[i]?.[1] as number)) / 2),
    side = (i: 0 | 1 | 2): string => millimetres((ends[i]?.[1] as number) - (ends[i]?.[0] as number))
  const others = packed.modules.filter(one => one.other).length,
    mains = packed.modules.length - others,
    overhead = packed.mass - mains * plan.bareModule - others * plan.bareOther
  const row = {
    modules: String(mains),
    ...(others > 0 ? { 'other-modules': String(others) } : {}),
    x: middle(0),
    y: middle(1),
    z: middle(2),
    overhead: `${overhead.toFixed(1)} ± ${(overhead * SPREAD).toFixed(1)} kg (assumed, sheet of the box with plates, links and brackets as planned; weigh it once built)`,
  }
  const shape = {
    length: side(0),
    width: side(1),
    height: side(2),
    ...(isGap(packing.material) ? {} : { material: packing.material.value }),
    wall: millimetres(plan.task.box.wall),
  }
  if (slot.isNew)
    return [
      { path: ['pack', 'boxes', slot.box], now: { ...row, ...(WHERE.has(kind) ? { where: kind } : {}) } },
      { path: ['fit', 'bodies', slot.body], now: { kind: 'battery box', box: slot.box, ...shape, space } },
    ]
  const body = m.fit.bodies[slot.body],
    stated = m.pack.boxes[slot.box]?.otherModules,
    emptied = others === 0 && stated && !isGap(stated),
    turned = body ? (['turn', 'tip', 'lean'] as const).filter(k => !isGap(body[k])) : []
  return [
    ...Object.entries(row).map(([k, now]): Edit => ({ path: ['pack', 'boxes', slot.box, k], now })),
    ...Object.entries(shape).map(([k, now]): Edit => ({ path: ['fit', 'bodies', slot.body, k], now })),
    ...(emptied ? [{ path: ['pack', 'boxes', slot.box, 'other-modules'], now: null }] : []),
    // It is packed square to the car.
    ...turned.map((k): Edit => ({ path: ['fit', 'bodies', slot.body, k], now: null })),
  ]
}
