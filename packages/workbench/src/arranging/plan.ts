import {
  type AlignedBox,
  Answers,
  type Ask,
  type BayModule,
  type BoxBuild,
  CLEARANCE_HABITS,
  chosenLimits,
  freeRooms,
  isGap,
  isGaps,
  ledger,
  loadCases,
  type Model,
  MODULES_LIE,
  MOST_MODULES,
  modulesAllOneWay,
  type PackModule,
  type PackTask,
  packModel,
  ratingsOf,
  SHELL_DENSITY,
  type Space,
  type SpaceKind,
  storedEnergy,
} from '@ampwright/engine'
import { Refusal } from '../refusal.ts'
import { mixOf } from './mix.ts'
import { takenRooms, wider } from './taken.ts'
import { behindWalls } from './walls.ts'
import { Wanting } from './wanted.ts'

/** A free room of a space of the file, as the search calls it. */
export type ArrangingRoom = { readonly name: string; readonly space: string; readonly kind: SpaceKind; readonly room: AlignedBox }
/** What is to be arranged, where. */
export type ArrangingPlan = {
  readonly task: PackTask
  readonly rooms: readonly ArrangingRoom[]
  /** Mass of one module as it is weighed, without what the task adds for links and brackets [kg]; the same of one of the other form. */
  readonly bareModule: number
  readonly bareOther: number
  /** Paths of what stands in the car or stays free and could not be kept clear of. */
  readonly unplaced: readonly string[]
}

/** Strings wanted; left out, as many as the file says. */
export type Arranging = { readonly strings?: { readonly least: number; readonly most: number } }

/** Most rooms that are filled together, and most of one space. */
const MOST_ROOMS = 8
const ROOMS_OF_SPACE = 2
/** Places and sizes are written in whole millimetres: what that may cost of the air round a box [m]. */
const ROUNDING = 1e-3

/**
 * The search for an arrangement of the battery, as a conversion states it: modules, boxes, free rooms of the spaces that take batteries, and what the axles carry without the battery in
 * their worst load case. The boxes the file has now are put aside.
 *
 * Throws a Refusal that names everything missing, or that says no module fits.
 */
export function arrangingPlan(model: Model, { strings }: Arranging = {}): ArrangingPlan {
  // Without its boxes the car is what the search starts from.
  const m: Model = { ...model, pack: { ...model.pack, boxes: {} } },
    { ask } = new Answers(m),
    w = new Wanting()
  const stated = w.number(m.pack.strings),
    series = w.number(m.pack.modulesInSeries)
  const wanted = strings ?? { least: stated, most: stated },
    bareModule = w.number(m.pack.module.mass),
    module = moduleOf(m, ask, w, series * stated),
    box = buildOf(m, w),
    mixed = mixOf(m, w, module, series, box),
    wheelbase = w.number(m.donor.wheelbase),
    axles = axlesOf(m, ask, w),
    spaces = spacesOf(m, w),
    { have } = m.pack.module
  w.refuse()
  const taken = takenRooms(m, ask),
    rooms = roomsOf(m, spaces, taken.rooms, mixed?.worth ?? (room => modulesAllOneWay(room, module, box)))
  if (rooms.length === 0)
    throw new Refusal('No module fits into any space that takes batteries, beside what stands there and must stay free.')
  refuseTooMany(rooms, [module, ...(mixed ? [mixed.mix.other] : [])])
  return {
    task: {
      spaces: rooms.map(({ name, room }) => ({ name, kind: 'box', low: room.low, high: room.high })),
      module: mixed?.module ?? module,
      ...(isGap(have) ? {} : { have: have.value }),
      ...(mixed ? { mix: mixed.mix } : {}),
      box,
      series,
      strings: wanted,
      splitGroups: false,
      wheelbase,
      ...axles,
    },
    rooms,
    bareModule,
    bareOther: mixed?.bare ?? 0,
    // Walls with a corner that is not measured cannot be kept clear of.
    unplaced: [...taken.unplaced, ...spaces.flatMap(([name, s]) => (behindWalls(s, 0) ? [] : [`fit.spaces.${name}.outline`]))].sort(),
  }
}

const volume = (sides: readonly number[]): number => sides.reduce((product, s) => product * s, 1)
/** A search lays out so many modules at most: what would hold more says that a size is wrong. */
function refuseTooMany(rooms: readonly ArrangingRoom[], modules: readonly PackModule[]): void {
  for (const { space, room } of rooms)
    for (const { size } of modules) {
      const most = volume(room.high.map((h, i) => h - (room.low[i] as number))) / volume(size)
      if (most > MOST_MODULES)
        throw new Refusal(
          `Into ${space} there would go some ${Math.round(most)} modules of ${size.map(s => Math.round(s * 1000)).join(' × ')} mm; up to ${MOST_MODULES} are laid out. Look at length, width and height of a module, and at the ends of that space.`,
        )
    }
}

function moduleOf(m: Model, ask: Ask, w: Wanting, modules: number): PackModule {
  const { module } = m.pack,
    { packing } = m.fit,
    pack = ask(packModel),
    lies = w.word(packing.lies)
  if (isGaps(pack)) w.notes(pack.gaps)
  const face = isGap(packing.serviceFace) ? undefined : packing.serviceFace.value
  const service: BayModule['service'] | undefined = face && { face: face === 'rear' ? 'back' : face, strip: w.number(packing.serviceRoom) }
  return {
    size: [w.number(module.length), w.number(module.width), w.number(module.height)],
    clearance: w.number(packing.gap),
    down: lies ? MODULES_LIE[lies] : [],
    ...(service ? { service } : {}),
    mass: w.number(module.mass) * (1 + w.number(packing.hardware)),
    energy: isGaps(pack) ? Number.NaN : storedEnergy({ openCircuit: pack.openCircuit.value, capacity: pack.capacity.value }) / modules,
  }
}

function buildOf({ fit: { packing: p } }: Model, w: Wanting): BoxBuild {
  const wall = w.number(p.wall),
    material = w.word(p.material)
  return {
    wall,
    plate: w.number(p.plate),
    lid: w.number(p.lid),
    busbar: w.number(p.busbars),
    sheet: material ? wall * SHELL_DENSITY[material].value : Number.NaN,
  }
}

/** What each axle carries in the load case that is worst for it, and may carry. Without a load case in the brief, at kerb. */
function axlesOf(m: Model, ask: Ask, w: Wanting): Pick<PackTask, 'front' | 'rear'> {
  const kerb = ask(ledger),
    loads = ask(loadCases),
    ratings = ratingsOf(m)
  if (isGaps(kerb)) w.notes(kerb.gaps)
  else if (isGaps(loads)) w.notes(loads.gaps)
  const laden = isGaps(loads) ? [] : Object.values(loads.cases)
  for (const c of laden) if (isGaps(c)) w.notes(c.gaps)
  const worst = (axle: 'front' | 'rear'): number =>
    Math.max(...(isGaps(kerb) ? [] : [kerb[axle].value]), ...laden.flatMap(c => (isGaps(c) ? [] : [c[axle].value])))
  const limit = { front: w.number(ratings['front axle']), rear: w.number(ratings['rear axle']) }
  return { front: { mass: worst('front'), limit: limit.front }, rear: { mass: worst('rear'), limit: limit.rear } }
}

/** Spaces that take batteries, by name; each measured whole. */
function spacesOf(m: Model, w: Wanting): readonly (readonly [string, Space])[] {
  const taking = Object.entries(m.fit.spaces)
    .filter(([, s]) => !isGap(s.takesBatteries) && s.takesBatteries.value === 'yes' && !(!isGap(s.kind) && s.kind.value === 'cabin'))
    .sort(([a], [b]) => (a < b ? -1 : 1))
  if (taking.length === 0)
    w.note({ path: 'fit.spaces.*.takes-batteries', label: 'a space, other than the cabin, that says batteries may stand in it' })
  for (const [, s] of taking) {
    w.word(s.kind)
    for (const end of [s.front, s.rear, s.left, s.right, s.bottom, s.top]) w.number(end)
  }
  return taking
}

function roomsOf(
  m: Model,
  spaces: readonly (readonly [string, Space])[],
  taken: readonly AlignedBox[],
  worth: (room: AlignedBox) => number,
): readonly ArrangingRoom[] {
  const air = CLEARANCE_HABITS.toBody.value + ROUNDING,
    kept = taken.map(room => wider(room, ROUNDING))
  const all: ArrangingRoom[] = []
  for (const [space, s] of spaces) {
    // Spaces may reach into each other: what one room takes is not given twice.
    const given = all.map(({ room }) => wider(room, air)),
      kind = isGap(s.kind) ? 'custom' : s.kind.value
    const rooms = freeRooms(within(m, s, air), [...kept, ...given, ...(behindWalls(s, air) ?? [])], {
      worth,
      most: ROOMS_OF_SPACE,
      apart: air,
    })
    all.push(...rooms.map((room, i): ArrangingRoom => ({ name: i === 0 ? space : `${space} ${i + 1}`, space, kind, room })))
  }
  return all.sort((a, b) => worth(b.room) - worth(a.room)).slice(0, MOST_ROOMS)
}

/** The inside of a space, less the air round a box; not below the clearance to the ground that is wanted, nor nearer to the ends of the car than the rule set lets batteries be. */
function within(m: Model, s: Space, air: number): AlignedBox {
  const at = (f: Space['front'], otherwise: number): number => (isGap(f) ? otherwise : f.value),
    { ground, ends } = m.fit,
    edge = edgesOf(m)
  return {
    low: [
      Math.max(at(s.front, Number.NaN) + air, at(ends.front, -Infinity) + edge.front + ROUNDING),
      at(s.left, Number.NaN) + air,
      Math.max(at(s.bottom, Number.NaN) + air, at(ground.clearance, 0) + ROUNDING),
    ],
    high: [
      Math.min(at(s.rear, Number.NaN) - air, at(ends.rear, Infinity) - edge.rear - ROUNDING),
      at(s.right, Number.NaN) - air,
      at(s.top, Number.NaN) - air,
    ],
  }
}

/** Distance from the ends of the car the rule set asks of battery boxes [m]. */
function edgesOf(m: Model): { readonly front: number; readonly rear: number } {
  const limits = chosenLimits(m),
    asked = (key: 'battery.edge.front' | 'battery.edge.rear'): number => {
      const value = typeof limits === 'function' ? limits(key)?.requirement.value : undefined
      return typeof value === 'number' ? value / 1000 : 0
    }
  return { front: asked('battery.edge.front'), rear: asked('battery.edge.rear') }
}
