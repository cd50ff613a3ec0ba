import {
  type AlignedBox,
  airToKept,
  armLine,
  type Ask,
  type Body,
  CLEARANCE_HABITS,
  corners,
  FACES,
  handlesOf,
  isGap,
  isGaps,
  type KeepOut,
  type Model,
  type OrientedBox,
  type OutsideHandle,
  places,
  roomBefore,
  shapesOf,
  sweptBoxes,
  tyres,
  type Vector,
} from '@ampwright/engine'

/** Rooms of the car that batteries keep clear of, and what could not be counted among them because its place or size is not known. */
export type Taken = { readonly rooms: readonly AlignedBox[]; readonly unplaced: readonly string[] }

/** What stands in the car beside the battery boxes, with the room before its faces, and what must stay free: each with the air wanted to it. */
export function takenRooms(m: Model, ask: Ask): Taken {
  const found = ask(places),
    unplaced: string[] = [],
    rooms: AlignedBox[] = []
  for (const [name, body] of shapesOf(m)) {
    if (body.kind === 'battery box') continue
    const shape = isGaps(found) ? undefined : found.shapes[name]
    if (!shape || isGaps(shape)) unplaced.push(`fit.bodies.${name}`)
    else rooms.push(...ofBody(body, shape.box))
  }
  for (const [name, kept] of Object.entries(m.fit.keepOuts)) {
    const room = kept && ofKept(kept)
    if (room) rooms.push(room)
    else unplaced.push(`fit.keep-outs.${name}`)
  }
  for (const [name, handle] of handlesOf(m)) {
    if (handle.kind === 'main switch of the driver') continue
    const line = armLine(m, handle)
    if (line && !isOfBox(m, handle)) rooms.push(wider(around(line), CLEARANCE_HABITS.roundArm.value))
    else unplaced.push(`fit.handles.${name}`)
  }
  for (const axle of ['front', 'rear'] as const) {
    const swept = atWheels(m, ask, axle)
    if (swept) rooms.push(...swept)
    else unplaced.push(`fit.wheels, ${axle}`)
  }
  return { rooms, unplaced: unplaced.sort() }
}

/** A handle on a battery box goes where the box goes. */
const isOfBox = ({ fit }: Model, { partOf }: OutsideHandle): boolean => !isGap(partOf) && fit.bodies[partOf.value]?.kind === 'battery box'

const about = (box: OrientedBox): AlignedBox => around(corners(box))
const around = (points: readonly Vector[]): AlignedBox => {
  const end = (pick: (...n: number[]) => number): Vector =>
    [0, 1, 2].map(i => pick(...points.map(p => p[i] as number))) as unknown as Vector
  return { low: end(Math.min), high: end(Math.max) }
}
/** A room with so much more on every side. */
export const wider = ({ low, high }: AlignedBox, by: number): AlignedBox => ({
  low: low.map(c => c - by) as unknown as Vector,
  high: high.map(c => c + by) as unknown as Vector,
})

function ofBody(body: Body, box: OrientedBox): readonly AlignedBox[] {
  const air = body.kind === 'motor' ? CLEARANCE_HABITS.atMotor : CLEARANCE_HABITS.toBody
  const before = FACES.flatMap(face => {
    const depth = body.room[face]
    return isGap(depth) || depth.value <= 0 ? [] : [about(roomBefore(box, face, depth.value))]
  })
  return [wider(about(box), air.value), ...before]
}

/** Slabs of the swept room of a wheel that are taken together: few cuboids keep the search for free rooms quick. */
const SLABS_TOGETHER = 4

/** The room both wheels of an axle take over lock and travel, as far as tyre, track, lock and travel are known. */
function atWheels({ donor, fit: { wheels: w } }: Model, ask: Ask, axle: 'front' | 'rear'): readonly AlignedBox[] | undefined {
  const loaded = ask(tyres),
    front = axle === 'front',
    { diameter, width } = donor.tyre
  const [track, x, lock, offset, bump, droop] = (
    front
      ? [donor.trackFront, 0, w.lock, w.steeringOffset, w.frontBump, w.frontDroop]
      : [donor.trackRear, donor.wheelbase, 0, 0, w.rearBump, w.rearDroop]
  ).map(f => (typeof f === 'number' ? f : isGap(f) ? Number.NaN : f.value)) as [number, number, number, number, number, number]
  if (
    isGaps(loaded) ||
    isGaps(loaded.loaded) ||
    isGap(diameter) ||
    isGap(width) ||
    [track, x, lock, offset, bump, droop].some(Number.isNaN)
  )
    return undefined
  const wheel = { axle: x, track, radius: diameter.value / 2, width: width.value, height: loaded.loaded.value, lock, offset, bump, droop }
  return (['left', 'right'] as const).flatMap(side => {
    const slabs = sweptBoxes(wheel, side).map(about),
      together = Array.from({ length: Math.ceil(slabs.length / SLABS_TOGETHER) }, (_, k) =>
        slabs.slice(k * SLABS_TOGETHER, (k + 1) * SLABS_TOGETHER),
      )
    return together.map(some => wider(around(some.flatMap(s => [s.low, s.high])), CLEARANCE_HABITS.toTyre.value))
  })
}

/** The room of something kept free; a shaft as the cuboid about it over the travel of its wheel. */
function ofKept(k: KeepOut): AlignedBox | undefined {
  const air = airToKept(k.kind).value
  if (k.kind !== 'shaft') {
    const ends = [k.front, k.left, k.bottom, k.rear, k.right, k.top].map(f => (isGap(f) ? Number.NaN : f.value))
    return ends.some(Number.isNaN) ? undefined : wider(around([ends.slice(0, 3), ends.slice(3)] as unknown as Vector[]), air)
  }
  const [x1, y1, z1, x2, y2, z2, diameter, up, down] = [k.fromX, k.fromY, k.fromZ, k.toX, k.toY, k.toZ, k.diameter, k.bump, k.droop].map(
    f => (isGap(f) ? Number.NaN : f.value),
  ) as [number, number, number, number, number, number, number, number, number]
  const room = around([
    [x1, y1, z1],
    [x2, y2, z2 + up],
    [x2, y2, z2 - down],
  ])
  return [...room.low, ...room.high, diameter].some(Number.isNaN) ? undefined : wider(room, diameter / 2 + air)
}
