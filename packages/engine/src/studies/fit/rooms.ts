import type { Block } from '../../model/fit.ts'
import { tyres } from '../donor/tyres.ts'
import { outlineArea, roomSize, shaftLine } from '../../fitting/kept-room.ts'
import type { Value } from '../../working/value.ts'
import { from, isGaps, type Maker, maybe, study } from '../study.ts'
import { cornersOf } from './outlines.ts'
import { keptFreeOf } from './kept-free.ts'
import { FRONT_AXLE } from './wheel-houses.ts'

const ENDS = ['front', 'rear', 'left', 'right', 'bottom', 'top'] as const
const endsOf = (b: Block) => ({ front: b.front, rear: b.rear, left: b.left, right: b.right, bottom: b.bottom, top: b.top })
const inOrder = <T>(named: Readonly<Record<string, T>>): readonly (readonly [string, T])[] =>
  Object.entries(named).sort(([a], [b]) => (a < b ? -1 : 1))

/** Spaces, what is kept free and the travel of the wheels, as drawings of the car show them. */
export const rooms = study({
  id: 'rooms',
  stage: 'fit',
  asks: 'Which spaces does the car have, and what must stay free?',
  reads: (m, ask) => ({
    spaces: inOrder(m.fit.spaces).map(([name, s]) => ({ name, is: maybe({ kind: s.kind, ...endsOf(s) }) })),
    corners: inOrder(m.fit.spaces).flatMap(([space, s]) =>
      cornersOf(s).map(([name, { x, y }]) => ({ name: `${space}: ${name}`, kind: space, is: maybe({ x, y }) })),
    ),
    profile: inOrder(m.fit.profile).map(([name, { x, z }]) => ({ name, is: maybe({ x, z }) })),
    blocks: keptFreeOf(m).flatMap(([name, k]) => (k.kind === 'shaft' ? [] : [{ name, kind: k.kind, is: maybe(endsOf(k)) }])),
    shafts: keptFreeOf(m).flatMap(([name, k]) =>
      k.kind === 'shaft'
        ? [
            {
              name,
              is: maybe({
                fromX: k.fromX,
                fromY: k.fromY,
                fromZ: k.fromZ,
                toX: k.toX,
                toY: k.toY,
                toZ: k.toZ,
                diameter: k.diameter,
                bump: k.bump,
                droop: k.droop,
              }),
            },
          ]
        : [],
    ),
    axles: (['front', 'rear'] as const).map(name => ({
      name,
      is: maybe({
        x: name === 'front' ? FRONT_AXLE : m.donor.wheelbase,
        track: name === 'front' ? m.donor.trackFront : m.donor.trackRear,
        diameter: m.donor.tyre.diameter,
        width: m.donor.tyre.width,
        height: from(ask(tyres), t => t.loaded),
      }),
    })),
    car: [{ name: 'car', is: maybe({ front: m.fit.ends.front, rear: m.fit.ends.rear, width: m.donor.width, height: m.donor.height }) }],
    wheels: (['front', 'rear'] as const).map(name => {
      const w = m.fit.wheels
      return {
        name,
        is: w.given
          ? maybe(
              name === 'front'
                ? { bump: w.frontBump, droop: w.frontDroop, lock: w.lock, offset: w.steeringOffset }
                : { bump: w.rearBump, droop: w.rearDroop },
            )
          : null,
      }
    }),
  }),
  answer: ({ spaces, corners, profile, blocks, shafts, axles, car, wheels }, make): Record<string, never> => {
    for (const { name, is } of spaces) if (!isGaps(is)) sized(make, 'size', name, is as Record<(typeof ENDS)[number], Value>)
    for (const { name, is } of blocks) if (!isGaps(is)) sized(make, 'kept-size', name, is as Record<(typeof ENDS)[number], Value>)
    for (const { name, is } of shafts) if (!isGaps(is)) lined(make, name, is as unknown as Record<string, Value>)
    for (const space of new Set(corners.map(c => c.kind)))
      enclosed(
        make,
        'floor',
        corners.filter(c => c.kind === space),
        'y',
        { item: space, label: `Floor inside the walls of ${space}` },
      )
    enclosed(make, 'side-area', profile, 'z', { label: 'Side of the car, inside its outline' })
    const ends = ENDS.map(key => ({ key, label: key, unit: 'm', shows: 'length' }))
    table(make, 'spaces', 'Spaces of the car', [{ key: 'kind', label: 'kind' }, ...ends], spaces)
    table(
      make,
      'outlines',
      'Walls of the spaces, seen from above',
      [
        { key: 'kind', label: 'space' },
        { key: 'x', label: 'behind the front axle', unit: 'm', shows: 'length' },
        { key: 'y', label: 'to the right', unit: 'm', shows: 'length' },
      ],
      corners,
    )
    table(
      make,
      'profile',
      'Outline of the car, seen from the side',
      [
        { key: 'x', label: 'behind the front axle', unit: 'm', shows: 'length' },
        { key: 'z', label: 'above the ground', unit: 'm', shows: 'length' },
      ],
      profile,
    )
    table(make, 'kept-free', 'Rooms kept free', [{ key: 'kind', label: 'kind' }, ...ends], blocks)
    const length = (key: string, label: string) => ({ key, label, unit: 'm', shows: 'length' })
    table(
      make,
      'shafts',
      'Turning shafts',
      [
        length('fromX', 'inner joint x'),
        length('fromY', 'y'),
        length('fromZ', 'z'),
        length('toX', 'outer joint x'),
        length('toY', 'y'),
        length('toZ', 'z'),
        length('diameter', 'diameter'),
        length('bump', 'up by'),
        length('droop', 'down by'),
      ],
      shafts,
    )
    table(
      make,
      'axles',
      'Axles and tyres',
      [
        length('x', 'behind the front axle'),
        length('track', 'track'),
        length('diameter', 'tyre'),
        length('width', 'tyre width'),
        length('height', 'wheel centre above the ground'),
      ],
      axles,
    )
    table(
      make,
      'car',
      'Ends of the car',
      [length('front', 'foremost point'), length('rear', 'rearmost point'), length('width', 'width'), length('height', 'height')],
      car,
    )
    table(
      make,
      'wheels',
      'Travel of the wheels',
      [
        length('bump', 'up by'),
        length('droop', 'down by'),
        { key: 'lock', label: 'full lock', unit: 'rad', shows: 'angle' },
        length('offset', 'outboard of the steering axis'),
      ],
      wheels,
    )
    return {}
  },
})

function sized(
  make: Maker,
  key: 'size' | 'kept-size',
  name: string,
  { front, rear, left, right, bottom, top }: Record<(typeof ENDS)[number], Value>,
): void {
  make.all(
    key,
    roomSize,
    { front, rear, left, right, bottom, top },
    { item: name, labels: { length: `${name}: long`, width: `${name}: wide`, height: `${name}: high`, volume: `${name}: volume` } },
  )
}
function lined(make: Maker, name: string, s: Record<string, Value>): void {
  const of = (...keys: string[]): Value[] => keys.map(k => s[k] as Value)
  make.all(
    'line',
    shaftLine,
    { from: of('fromX', 'fromY', 'fromZ'), to: of('toX', 'toY', 'toZ'), bump: s['bump'] as Value, droop: s['droop'] as Value },
    { item: name, labels: { length: `${name}: joint to joint`, up: `${name}: leans, joint up`, down: `${name}: leans, joint down` } },
  )
}
/** Area inside corners in order, once every one is known. */
function enclosed(
  make: Maker,
  key: 'floor' | 'side-area',
  corners: readonly { readonly is: unknown }[],
  up: 'y' | 'z',
  options: { readonly item?: string; readonly label: string },
): void {
  const known = corners.flatMap(({ is }) => (isGaps(is as object) ? [] : [is as Readonly<Record<string, Value>>]))
  if (known.length < corners.length || known.length < 3) return
  const next = [...known.slice(1), known[0] as (typeof known)[number]],
    all = (list: typeof known, k: string): Value[] => list.map(c => c[k] as Value)
  make.work(key, outlineArea, { x: all(known, 'x'), y: all(known, up), nextX: all(next, 'x'), nextY: all(next, up) }, options)
}

type Row = { readonly name: string; readonly kind?: string; readonly is: unknown }
function table(make: Maker, key: string, label: string, columns: Parameters<Maker['table']>[1]['columns'], rows: readonly Row[]): void {
  make.table(key, {
    label,
    columns,
    rows: rows.flatMap(({ name, kind, is }) =>
      is === null || isGaps(is as object)
        ? []
        : [{ name, cells: { ...(kind === undefined ? {} : { kind }), ...(is as Record<string, Value>) } }],
    ),
  })
}
