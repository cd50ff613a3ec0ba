import { modulesByVolume, modulesOneWay } from '../../fitting/packing/modules-in-box.ts'
import type { BoxBody } from '../../model/fit.ts'
import type { Model } from '../../model/model.ts'
import { type Figure, isGap, type Value } from '../../working/value.ts'
import { type Gaps, isGaps, maybe, study } from '../study.ts'
import { type RoomForTwo, roomForTwo } from './box-room-two-forms.ts'
import { type BoxKnown, counted, waysInBox } from './box-ways.ts'
import { shapesOf } from './places.ts'

/** Modules a battery box is to take, how many go in when all stand the same way round, and how many at most. */
export type BoxRoom = { readonly stated: Value; readonly oneWay: Figure; readonly most: Figure }

const boxesOf = (m: Model): readonly (readonly [string, BoxBody])[] =>
  shapesOf(m).flatMap(([name, b]) => (b.kind === 'battery box' ? [[name, b] as const] : []))

/** Modules of the other form a box is said to hold; null for none. */
function othersOf({ pack }: Model, { box }: BoxBody): Value | null {
  const others = isGap(box) ? box : pack.boxes[box.value]?.otherModules
  return !others || isGap(others) || others.value === 0 ? null : others
}

/** Whether the modules of each battery box have room inside it. */
export const boxRoom = study({
  id: 'box-room',
  stage: 'fit',
  asks: 'How many modules have room in each battery box?',
  reads: m => {
    const { packing: p } = m.fit,
      { module, otherModule } = m.pack,
      face = isGap(p.serviceFace) ? undefined : p.serviceFace
    return {
      // Asked for only where a box is said to hold some of it.
      otherForm: boxesOf(m).some(([, b]) => othersOf(m, b) !== null)
        ? maybe({ along: otherModule.length, across: otherModule.width, up: otherModule.height })
        : null,
      boxes: boxesOf(m).map(([name, b]) => ({
        name,
        others: othersOf(m, b),
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
  answer: ({ otherForm, boxes }, make): { readonly rooms: Readonly<Record<string, BoxRoom | RoomForTwo | Gaps>> } => {
    const rooms: Record<string, BoxRoom | RoomForTwo | Gaps> = {}
    for (const { name, others, stated, room } of boxes) {
      if (isGaps(room) || isGaps(stated)) {
        rooms[name] = isGaps(room) ? room : (stated as Gaps)
        continue
      }
      if (others !== null && otherForm !== null) {
        rooms[name] = isGaps(otherForm)
          ? otherForm
          : roomForTwo(make, name, stated as Value, others, room as BoxKnown, { ...(room as BoxKnown), ...otherForm })
        continue
      }
      const all = waysInBox(room as BoxKnown),
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
