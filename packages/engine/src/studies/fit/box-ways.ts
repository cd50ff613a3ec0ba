import { type ModuleFace, type ModulesLie, MODULES_LIE, turnsOfModule } from '../../fitting/packing/bay-module.ts'
import { modulesOneWay } from '../../fitting/packing/modules-in-box.ts'
import { standard, type Value } from '../../working/value.ts'

export const NO_ROOM = {
  ...standard('no-room-kept', 'nothing is kept free there', 'f', 0, 'm', { work: 'definition', place: 'nothing' }),
  shows: 'length',
} as const
type Sides = Record<'along' | 'across' | 'up', Value>
/** A box, what is kept in it, and the form of module that is to stand in it. */
export type BoxKnown = Record<'length' | 'width' | 'height' | 'wall' | 'plate' | 'lid' | 'busbars' | 'between', Value> &
  Sides & { readonly lies: Value<ModulesLie>; readonly face?: Value<'front' | 'rear' | 'left' | 'right' | 'top'>; readonly before?: Value }

/** Inputs of every way all modules may stand in a box: turned as they may lie, busbars at an end or along a side. */
export function waysInBox({ lies, face, before, along, across, up, length, width, height, wall, plate, lid, busbars, between }: BoxKnown) {
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
export type BoxWay = ReturnType<typeof waysInBox>[number]
export const counted = (way: BoxWay): number =>
  modulesOneWay(Object.fromEntries(Object.entries(way).map(([k, v]) => [k, v.value])) as Record<keyof BoxWay, number>)
