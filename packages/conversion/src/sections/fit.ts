import { BLOCK_KINDS } from '@ampwright/engine'
import { choice, type Fields, file, group, mapOf, quantity, reference, variants, words } from '../schema/field.ts'
import { ACROSS, ALONG, UP } from '../schema/reach.ts'
import { LOOK } from './tools.ts'

// Tools, accuracies and times in this file are common practice.
const TAPE = { tool: 'tape, plumb line and straight edge', accuracy: '± 5 mm', minutes: 10 }
const LABEL = { tool: 'type plate or datasheet', accuracy: 'as stated', minutes: 5 }
const TRAVEL = { tool: 'tape, spring out: wheel jacked up to the stop, then hanging', accuracy: '± 5 mm', minutes: 30 }
const LOCK = { tool: 'turn plates, or tape and chalk line along the tyre', accuracy: '± 2°', minutes: 15 }
const SPRING = { tool: 'tape at the wheel arch, a known mass put over the axle and taken off', accuracy: '± 10 %', minutes: 30 }
const SCALES = { tool: 'wheel scales, or an axle weighbridge', accuracy: '± 5 kg', minutes: 30 }
const SEATED = { tool: 'tape, the driver belted, a second person', accuracy: '± 10 mm', minutes: 10 }
const TRIAL = { tool: 'try the tool and the hand it takes, or the datasheet', accuracy: '± 10 mm', minutes: 10 }

const along = (label: string, symbol: string) => quantity('length', `${label}, behind the front axle`, symbol, { ...ALONG, measure: TAPE })
const across = (label: string, symbol: string) =>
  quantity('length', `${label}, to the right of the centre line`, symbol, { ...ACROSS, measure: TAPE })
const up = (label: string, symbol: string) => quantity('length', `${label}, above the ground`, symbol, { ...UP, measure: TAPE })
const side = (label: string, symbol: string) => quantity('length', label, symbol, { least: 0.005, most: 6, measure: TAPE })
const turned = (label: string, symbol: string, says: string) =>
  quantity('angle', label, symbol, { least: -Math.PI, most: Math.PI, says, measure: { tool: 'angle gauge', accuracy: '± 1°', minutes: 5 } })
const onScales = (car: 'stripped' | 'finished', mark: 's' | '1') => {
  const one = (what: string, symbol: string) =>
    quantity('mass', `${car} car, ${what}`, `${symbol}${mark}`, { least: 1, most: 20_000, measure: SCALES })
  return {
    'front-left': one('front left wheel', 'm_FL'),
    'front-right': one('front right wheel', 'm_FR'),
    'rear-left': one('rear left wheel', 'm_RL'),
    'rear-right': one('rear right wheel', 'm_RR'),
    front: one('front axle', 'm_F'),
    rear: one('rear axle', 'm_R'),
    with: words('what was in the car that is not part of it'),
  }
}
const reckoned = (what: string, symbol: string) =>
  quantity('mass', `${what} by the ledger the day it was weighed`, symbol, {
    least: 1,
    most: 20_000,
    says: 'Left out: masses and axle loads rest on the ledger, and the scales are only held against it.',
  })
const travel = (label: string, symbol: string) => quantity('length', label, symbol, { least: 0, most: 0.5, measure: TRAVEL })

const WAYS = ['from above', 'from below', 'from ahead', 'from behind', 'from the left', 'from the right'] as const
const SHELLS = ['steel', 'stainless steel', 'aluminium', 'glass-fibre laminate'] as const
const onScan = (which: string, symbol: string) =>
  quantity('number', `${which} coordinate of the point as the file counts`, symbol, { least: -1e9, most: 1e9 })

/** Six ends of a room square to the car. */
const ends = {
  front: along('front end', 'x_1'),
  rear: along('rear end', 'x_2'),
  left: across('left end', 'y_1'),
  right: across('right end', 'y_2'),
  bottom: up('bottom', 'z_1'),
  top: up('top', 'z_2'),
}

const wanted = (face: string, symbol: string) =>
  quantity('length', `free depth wanted before its ${face}`, symbol, {
    least: 0,
    most: 2,
    measure: TRIAL,
    says: 'Left out: this face is not reached.',
  })
const onPart = (label: string, symbol: string) =>
  quantity('length', `fixing point, ${label}`, symbol, { least: -1, most: 10, measure: TAPE })
const shape = {
  length: side('length along the car, before it is turned', 'ℓ'),
  width: side('width across the car, before it is turned', 'w'),
  height: side('height, before it is turned', 'h'),
  turn: turned('turned about the vertical, its rear to the right', 'ψ', 'Left out: square to the car.'),
  tip: turned('tipped, its top to the rear', 'θ', 'Left out: upright.'),
  lean: turned('leant, its right side up', 'φ', 'Left out: upright.'),
  mesh: file('mesh of the part', 'fingerprint', 'scan mesh', '', {
    says: 'For what is no box: a mesh beside the conversion (STL, OBJ, PLY, glTF or GLB), its first axis along the length, its second across, its third up; of glTF as that format says. The middle of its extent stands in the middle of the shape. Left out: it is its box.',
  }),
  'mesh-unit': choice('unit of the mesh', ['mm', 'cm', 'm', 'in', 'ft'], {
    says: 'Left out: length, width and height tell it.',
  }),
  space: reference('space it stands in', 'fit.spaces'),
  protection: choice('protection against dust and water', ['IP20', 'IP40', 'IP54', 'IP55', 'IP65', 'IP66', 'IP67', 'IP68', 'IP69K'], {
    measure: LABEL,
  }),
  room: group(
    'free depth wanted',
    {
      front: wanted('front', 'd_1'),
      rear: wanted('rear', 'd_2'),
      left: wanted('left side', 'd_3'),
      right: wanted('right side', 'd_4'),
      top: wanted('top', 'd_5'),
      bottom: wanted('bottom', 'd_6'),
    },
    { says: 'For terminals, connectors, fans, tools and a hand. The faces are those before it is turned.' },
  ),
  fixing: choice('how it is fixed', ['existing points', 'new holes', 'cut out', 'welded on'], {
    says: 'Cuts and welds are asked for before the work: some rule sets allow none.',
  }),
  'fixed-into': choice('what it is fixed into', [
    'chassis or cross member',
    'sill or bulkhead',
    'floor sheet with spreading plates',
    'floor sheet alone',
  ]),
  'fixing-points': quantity('count', 'points it is fixed at', 'n_f', { least: 1, most: 100, measure: LOOK }),
  points: mapOf(
    'where it is fixed',
    'fixing point',
    group('fixing point', {
      back: onPart('behind the front end of the part', 'b'),
      across: onPart('to the right of its left side', 'a'),
      up: onPart('above its underside', 'u'),
    }),
    'Measured on the part, before it is turned; below zero beside it. Left out: only their number is known.',
  ),
} satisfies Fields
const moving = {
  ...shape,
  'way-in': choice('way it goes in', WAYS, {
    says: 'Left out: its way is not looked at. Straight into its place; what stays in the car and what is kept free is looked for along that way.',
  }),
} satisfies Fields

const block = group('room kept free', ends)
const handle = {
  x: along('handle', 'x'),
  y: across('handle', 'y'),
  z: up('handle', 'z'),
  'part-of': { ...reference('shape it belongs to', 'fit.bodies'), says: 'Left out: it stands by itself.' },
} satisfies Fields
const outside = (label: string) =>
  group(label, {
    ...handle,
    space: reference('space it is reached in', 'fit.spaces'),
    reached: choice('way an arm reaches it', WAYS, { measure: LOOK, says: 'Straight in from the end of that space.' }),
    label: choice('a label outside, and the rescue sheet, show where it is', ['yes', 'no'], { measure: LOOK }),
  })

const allowance = (label: string, symbol: string, more: { readonly says?: string; readonly most?: number } = {}) =>
  quantity('length', label, symbol, { least: 0, most: 0.2, ...more })
/** What a search for an arrangement of the battery is told about modules and boxes. */
const packing = group(
  'arranging the battery',
  {
    lies: choice('how a module may lie', ['upright', 'upright or on a long side', 'any way but on its head', 'any way'], {
      measure: { tool: 'datasheet of the module, or its maker', accuracy: 'as stated', minutes: 10 },
      says: 'Cells whose maker does not say otherwise stand as they did in the car they came from.',
    }),
    gap: allowance('air between two modules', 'd_m'),
    'service-face': choice('face of a module that must be reached', ['front', 'rear', 'left', 'right', 'top'], {
      says: 'For its terminals and plugs, named as the module stands upright, its length along the car. Left out: none.',
    }),
    'service-room': allowance('free depth before that face', 'd_s', { says: 'Two modules may share it.' }),
    wall: quantity('length', 'thickness of walls, floor and lid', 't', { least: 0.0003, most: 0.05 }),
    material: choice('material of the boxes', SHELLS),
    plate: allowance('height of the cooling plate under the modules', 'h_p', { says: 'Without one: 0 mm.' }),
    busbars: allowance('room for busbars and plugs along one side', 'd_b'),
    lid: allowance('air between modules and lid', 'd_l'),
    hardware: quantity('share', 'plates, links and brackets over the mass of the modules', 'k_h', {
      least: 0,
      most: 2,
      says: 'What a box weighs beside its sheet.',
    }),
  },
  {
    says: 'Read by the search for an arrangement of the battery, which puts boxes into spaces, and where modules are held against the room in their box.',
  },
)

/** Where everything goes: spaces of the car, shapes of what goes in, and what must stay free. */
export const fit = group(
  'fit',
  {
    spaces: mapOf(
      'spaces',
      'space',
      group('space', {
        kind: choice('kind of space', ['engine bay', 'under floor', 'tank space', 'boot', 'cabin', 'tunnel', 'custom'], { measure: LOOK }),
        'open-to-cabin': choice('air of the space reaches the cabin', ['yes', 'no'], {
          measure: { tool: 'smoke pen in the space, cabin fan on', accuracy: 'seen or not', minutes: 20 },
        }),
        'takes-batteries': choice('batteries may stand in it', ['yes', 'no'], {
          says: 'Read where an arrangement of the battery is looked for. The cabin never takes any.',
        }),
        ...ends,
        outline: mapOf(
          'walls seen from above',
          'corner',
          group('corner', { x: along('corner', 'X'), y: across('corner', 'Y') }),
          'Corners in the order of their names, round the space, where its walls do not stand square. At least three; left out: the six ends say all.',
        ),
      }),
      'Measured where it is narrowest.',
    ),
    bodies: mapOf(
      'shapes',
      'shape',
      variants('shape', 'kind', {
        motor: group('motor', { unit: reference('drive unit', 'drive.units'), ...moving }),
        inverter: group('inverter', { unit: reference('drive unit', 'drive.units'), ...moving }),
        'battery box': group('battery box', {
          box: reference('battery box', 'pack.boxes'),
          ...moving,
          'lid-seal': choice('lid with a seal', ['yes', 'no']),
          'lid-opens': choice('where its lid is opened', ['in the car', 'once the box is out']),
          vent: choice('where gas of the cells goes', ['to the outside', 'into the cabin', 'none']),
          drain: choice('water that gets in runs out, or sensors tell of it', ['yes', 'no']),
          breathing: choice('how air passes when the box warms and cools', ['through a membrane', 'freely', 'not at all']),
          material: choice('material of the shell', SHELLS),
          wall: quantity('length', 'thickness of the shell', 't', { least: 0.0003, most: 0.05, measure: TAPE }),
        }),
        'part put in': group('part put in', { part: reference('part put in', 'donor.added'), ...moving }),
        'on-board charger': group('on-board charger', moving),
        'AC inlet': group('AC inlet', moving),
        'stays in the car': group('something that stays in the car', {
          ...shape,
          x: along('its middle', 'x'),
          y: across('its middle', 'y'),
          z: up('its middle', 'z'),
        }),
      }),
      'A shape has its place where its mass is listed: with the motor, the inverter, the battery box or the part put in. Its middle is taken to stand there.',
    ),
    'keep-outs': mapOf(
      'kept free',
      'room kept free',
      variants('room kept free', 'kind', {
        ...(Object.fromEntries(BLOCK_KINDS.map(kind => [kind, block])) as Record<(typeof BLOCK_KINDS)[number], typeof block>),
        shaft: group('turning shaft', {
          'from-x': along('inner joint', 'x_i'),
          'from-y': across('inner joint', 'y_i'),
          'from-z': up('inner joint', 'z_i'),
          'to-x': along('outer joint', 'x_o'),
          'to-y': across('outer joint', 'y_o'),
          'to-z': up('outer joint', 'z_o'),
          diameter: quantity('length', 'diameter of the shaft', 'D', { least: 0.005, most: 0.5, measure: TAPE }),
          bump: travel('outer joint goes up by', 't_b'),
          droop: travel('outer joint goes down by', 't_d'),
        }),
      }),
      'What nothing may cover or touch.',
    ),
    handles: mapOf(
      'what cuts the power',
      'handle',
      variants('handle', 'kind', {
        'main switch of the driver': group('main switch of the driver', handle),
        'cut point for rescuers': outside('cut point for rescuers'),
        'service disconnect': outside('service disconnect'),
      }),
      'What driver, rescuers and mechanic pull. Reached without tools and without lifting the car.',
    ),
    driver: group(
      'driver, belted',
      {
        x: along('shoulder', 'x_s'),
        y: across('shoulder', 'y_s'),
        z: up('shoulder', 'z_s'),
        arm: quantity('length', 'arm, from the shoulder to the closed hand', 'ℓ_a', { least: 0.3, most: 1.2, measure: SEATED }),
      },
      { says: 'The shortest who drives the car, belted, the shoulder on the side of the main switch.' },
    ),
    packing,
    scans: mapOf(
      'scans',
      'scan',
      group('scan', {
        file: file('scan', 'fingerprint', 'scan mesh', '', { says: 'A mesh beside the conversion: STL, OBJ, PLY, glTF or GLB.' }),
        unit: choice('unit of the file', ['mm', 'cm', 'm', 'in', 'ft'], {
          says: 'Left out: the distances between the points tell it.',
        }),
        mirrored: choice('left and right are exchanged in the file', ['yes', 'no'], { says: 'Left out: they are not.' }),
        points: mapOf(
          'points picked',
          'point',
          group('point picked', {
            'on-scan-x': onScan('first', 'u'),
            'on-scan-y': onScan('second', 'v'),
            'on-scan-z': onScan('third', 'w'),
            x: along('its place in the car', 'x'),
            y: across('its place in the car', 'y'),
            z: up('its place in the car', 'z'),
          }),
          'Three or more, well apart and not on one line, that can be found on the scan and measured in the car.',
        ),
        inside: group(
          'a place in the free space',
          { x: along('a place in the open', 'x_0'), y: across('a place in the open', 'y_0'), z: up('a place in the open', 'z_0') },
          { says: 'Where the flood starts that finds the free space. Left out: free space is not looked for.' },
        ),
        resolution: quantity('length', 'edge of the cubes free space is cut into', 'a', { least: 0.002, most: 0.2 }),
        space: reference('space it stands for', 'fit.spaces'),
      }),
      'Surfaces of the car as they were scanned. Nothing measured on them stands in the file: it is measured anew.',
    ),
    profile: mapOf(
      'outline of the car seen from the side',
      'corner',
      group('corner', { x: along('corner', 'X'), z: up('corner', 'Z') }),
      'Corners in the order of their names, round the car: bumper, bonnet, screen, roof, tail, sills. Drawings show it as wide as the car. Left out: a box of length, width and height.',
    ),
    ends: group('ends of the car', { front: along('foremost point', 'x_v'), rear: along('rearmost point', 'x_h') }),
    wheels: group('wheels in their houses', {
      lock: quantity('angle', 'full lock of the inner wheel', 'δ', { least: 0, most: 1.2, measure: LOCK }),
      'steering-offset': quantity('length', 'wheel centre outboard of its steering axis', 'e', { least: -0.2, most: 0.3, measure: TAPE }),
      'front-bump': travel('front wheel goes up by', 't_Fb'),
      'front-droop': travel('front wheel goes down by', 't_Fd'),
      'rear-bump': travel('rear wheel goes up by', 't_Rb'),
      'rear-droop': travel('rear wheel goes down by', 't_Rd'),
    }),
    ground: group(
      'ground',
      {
        clearance: quantity('length', 'least height wanted under what goes in, car standing', 'z_min', {
          least: 0,
          most: 1,
          says: 'Such as the lowest point of the donor car’s chassis: nothing hangs below it.',
        }),
        approach: quantity('angle', 'approach angle wanted', 'α_F', { least: 0, most: 1.5 }),
        departure: quantity('angle', 'departure angle wanted', 'α_R', { least: 0, most: 1.5 }),
        ramp: quantity('angle', 'ramp angle wanted', 'β', { least: 0, most: 1.5 }),
      },
      { says: 'Angles left out are not judged.' },
    ),
    springs: group('springs', {
      front: quantity('stiffness', 'rate at one front wheel', 'k_F', { least: 1000, most: 500_000, measure: SPRING }),
      rear: quantity('stiffness', 'rate at one rear wheel', 'k_R', { least: 1000, most: 500_000, measure: SPRING }),
      'front-new': quantity('stiffness', 'rate at one front wheel of the springs that go in', 'k_F2', {
        least: 1000,
        most: 500_000,
        measure: SPRING,
        says: 'Left out: the springs it has stay.',
      }),
      'rear-new': quantity('stiffness', 'rate at one rear wheel of the springs that go in', 'k_R2', {
        least: 1000,
        most: 500_000,
        measure: SPRING,
        says: 'Left out: the springs it has stay.',
      }),
      'front-raised': quantity('length', 'front springs that go in raise the car by', 'Δh_F', {
        least: -0.2,
        most: 0.2,
        measure: TAPE,
        says: 'At the wheel, under the same load. Left out: they do not.',
      }),
      'rear-raised': quantity('length', 'rear springs that go in raise the car by', 'Δh_R', {
        least: -0.2,
        most: 0.2,
        measure: TAPE,
        says: 'At the wheel, under the same load. Left out: they do not.',
      }),
      tyre: quantity('stiffness', 'rate of one tyre', 'k_T', { least: 10_000, most: 2_000_000, measure: SPRING }),
      'front-unsprung': quantity('mass', 'unsprung mass at one front wheel', 'm_uF', { least: 1, most: 500, measure: LABEL }),
      'rear-unsprung': quantity('mass', 'unsprung mass at one rear wheel', 'm_uR', { least: 1, most: 500, measure: LABEL }),
    }),
    lifting: group('hands and hoist', {
      people: quantity('count', 'people who lift together', 'n_p', { least: 1, most: 12, says: 'Left out: only the hoist lifts.' }),
      hoist: quantity('mass', 'rating of the hoist or lift table', 'm_hoist', {
        least: 20,
        most: 20_000,
        measure: LABEL,
        says: 'Left out: only people lift.',
      }),
    }),
    stripped: group('stripped car on the scales', onScales('stripped', 's'), {
      says: 'With all that comes out taken out and nothing put in yet, by wheels or by axles: from then on the car is reckoned from it, and no longer from what came out. Left and right are known only where it was weighed by wheels.',
    }),
    weighed: group(
      'finished car on the scales',
      {
        ...onScales('finished', '1'),
        'reckoned-front': reckoned('front axle', 'm_F0'),
        'reckoned-rear': reckoned('rear axle', 'm_R0'),
      },
      {
        says: 'With nobody aboard, by wheels or by axles: what it says is held against the ledger. With what the ledger said that day the car is reckoned from the scales, and the ledger only adds what has changed since.',
      },
    ),
    lift: group('two-post lift', {
      'front-pads': along('front pads', 'x_f'),
      'rear-pads': along('rear pads', 'x_r'),
      'arm-rating': quantity('mass', 'rating of one arm', 'm_arm', { least: 100, most: 20_000, measure: LABEL }),
    }),
  },
  { says: 'Where everything goes, in three dimensions, and what must stay free.' },
)
