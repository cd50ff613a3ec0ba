import { type ModuleFace, type ModulesLie, MODULES_LIE, turnsOfModule } from '../../fitting/packing/bay-module.ts'
import { modulesByVolume, modulesOneWay } from '../../fitting/packing/modules-in-box.ts'
import type { BoxBody } from '../../model/fit.ts'
import type { Model } from '../../model/model.ts'
import { type Figure, isGap, standard, type Value } from '../../working/value.ts'
import { type Gaps, isGaps, maybe, study } from '../study.ts'
import { shapesOf } from './places.ts'

/** Modules a battery box is to take, how many go in when all stand the same way round, and how many at most. */
export type BoxRoom = { readonly stated: Value; readonly oneWay: Figure; readonly most: Figure }

const NO_ROOM = {
  ...standard('no-room-kept', 'nothing is kept free there', 'f', 0, 'm', { work: 'definition', place: 'nothing' }),
  shows: 'length',
} as const
type Sides = Record<'along' | 'across' | 'up', Value>
type Known = Record<'length' | 'width' | 'height' | 'wall' | 'plate' | 'lid' | 'busbars' | 'between', Value> &
  Sides & { readonly lies: Value<ModulesLie>; readonly face?: Value<'front' | 'rear' | 'left' | 'right' | 'top'>; readonly before?: Value }

const boxesOf = (m: Model): readonly (readonly [string, BoxBody])[] =>
  shapesOf(m).flatMap(([name, b]) => (b.kind === 'battery box' ? [[name, b] as const] : []))

/** Inputs of every way all modules may stand in a box: turned as they may lie, busbars at an end or along a side. */
function ways({ lies, face, before, along, across, up, length, width, height, wall, plate, lid, busbars, between }: Known) {
  const service: ModuleFace | undefined = face && (face.value === 'rear' ? 'back' : face.value),
    sides = [along, across, up] as const
  // Turned are the numbers of its sides, so that each side keeps where it came from.
  const turns = turnsOfModule({
    size: [0, 1, 2],
    clearance: between.value,
    down: MODULES_LIE[lies.value],
    ...(service ? { service: { face: service, strip: 0 } } : {}),
  })
  return turns.flatMap(({ sides: order, looks }) => {
    const [a, b, c] = order.map(i => sides[i as 0 | 1 | 2]) as [Value, Value, Value],
      free = (axis: number): Value => (looks?.axis === axis && before ? before : NO_ROOM)
    const box = { length, width, height, wall, plate, lid, between, along: a, across: b, up: c },
      kept = { beforeAlong: free(0), beforeAcross: free(1), beforeUp: free(2) }
    return [
      { ...box, ...kept, ends: NO_ROOM, sides: busbars },
      { ...box, ...kept, ends: busbars, sides: NO_ROOM },
    ]
  })
}
type Way = ReturnType<typeof ways>[number]
const counted = (way: Way): number =>
  modulesOneWay(Object.fromEntries(Object.entries(way).map(([k, v]) => [k, v.value])) as Record<keyof Way, number>)

/** Whether the modules of each battery box have room inside it. */
export const boxRoom = study({
  id: 'box-room',
  stage: 'fit',
  asks: 'How many modules have room in each battery box?',
  reads: m => {
    const { packing: p } = m.fit,
      { module } = m.pack,
      face = isGap(p.serviceFace) ? undefined : p.serviceFace
    return {
      boxes: boxesOf(m).map(([name, b]) => ({
        name,
        stated: maybe(isGap(b.box) ? b.box : (m.pack.boxes[b.box.value]?.modules ?? { gaps: [] })),
        room: maybe({
          length: b.length,
          width: b.width,
          height: b.height,
          wall: b.wall,
          along: module.length,
          across: module.width,
          up: module.height,
          lies: p.lies,
          plate: p.plate,
          lid: p.lid,
          busbars: p.busbars,
          between: p.gap,
          ...(face ? { face, before: p.serviceRoom } : {}),
        }),
      })),
    }
  },
  answer: ({ boxes }, make): { readonly rooms: Readonly<Record<string, BoxRoom | Gaps>> } => {
    const rooms: Record<string, BoxRoom | Gaps> = {}
    for (const { name, stated, room } of boxes) {
      if (isGaps(room) || isGaps(stated)) {
        rooms[name] = isGaps(room) ? room : (stated as Gaps)
        continue
      }
      const all = ways(room as Known),
        best = all.reduce((most, way) => (counted(way) > counted(most) ? way : most))
      const { length, width, height, wall, plate, lid, along, across, up } = best
      rooms[name] = {
        stated: stated as Value,
        oneWay: make.work('one-way', modulesOneWay, best, { item: name, label: `Modules with room in ${name}, all the same way round` }),
        most: make.work(
          'by-volume',
          modulesByVolume,
          { length, width, height, wall, plate, lid, along, across, up },
          { item: name, label: `Modules in ${name}, never more than` },
        ),
      }
    }
    return { rooms }
  },
})
