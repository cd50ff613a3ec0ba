import type { Field } from '../working/value.ts'
import type { Scales } from './donor.ts'
import type { Here, Named } from './group.ts'

export type SpaceKind = 'engine bay' | 'under floor' | 'tank space' | 'boot' | 'cabin' | 'tunnel' | 'custom'
/** Room square to the car, by its six ends. */
export type Block = Here & {
  readonly front: Field
  readonly rear: Field
  readonly left: Field
  readonly right: Field
  readonly bottom: Field
  readonly top: Field
}
/** Where something may stand, inside what is measured of it. */
export type Space = Block & {
  readonly kind: Field<SpaceKind>
  readonly openToCabin: Field<'yes' | 'no'>
  /** Corners of its walls seen from above, in the order of their names. */
  readonly outline: Named<Here & { readonly x: Field; readonly y: Field }>
  readonly takesBatteries: Field<'yes' | 'no'>
}

export type Ip = 'IP20' | 'IP40' | 'IP54' | 'IP55' | 'IP65' | 'IP66' | 'IP67' | 'IP68' | 'IP69K'
/** The shape of a thing: its sides before it is turned, and how it is turned. Its middle stands where its mass is reckoned. */
export type Shape = Here & {
  readonly length: Field
  readonly width: Field
  readonly height: Field
  readonly turn: Field
  readonly tip: Field
  readonly lean: Field
  /** Fingerprint of the file of its mesh, for what is no box. */
  readonly mesh: Field<string>
  readonly meshUnit: Field<'mm' | 'cm' | 'm' | 'in' | 'ft'>
  readonly space: Field<string>
  readonly protection: Field<Ip>
  /** Free depth wanted before a face, the faces named before the thing is turned. */
  readonly room: Here & {
    readonly front: Field
    readonly rear: Field
    readonly left: Field
    readonly right: Field
    readonly top: Field
    readonly bottom: Field
  }
  readonly fixing: Field<'existing points' | 'new holes' | 'cut out' | 'welded on'>
  readonly fixedInto: Field<'chassis or cross member' | 'sill or bulkhead' | 'floor sheet with spreading plates' | 'floor sheet alone'>
  readonly fixingPoints: Field
  /** Measured on the part before it is turned. */
  readonly points: Named<{ readonly back: Field; readonly across: Field; readonly up: Field }>
}
export type StraightWay = 'from above' | 'from below' | 'from ahead' | 'from behind' | 'from the left' | 'from the right'
type Moving = Shape & {
  readonly wayIn: Field<StraightWay>
}
export type MotorBody = Moving & { readonly kind: 'motor'; readonly unit: Field<string> }
export type InverterBody = Moving & { readonly kind: 'inverter'; readonly unit: Field<string> }
export type BoxBody = Moving & {
  readonly kind: 'battery box'
  readonly box: Field<string>
  readonly lidSeal: Field<'yes' | 'no'>
  readonly lidOpens: Field<'in the car' | 'once the box is out'>
  readonly vent: Field<'to the outside' | 'into the cabin' | 'none'>
  readonly drain: Field<'yes' | 'no'>
  readonly breathing: Field<'through a membrane' | 'freely' | 'not at all'>
  readonly material: Field<ShellMaterial>
  readonly wall: Field
}
export type ShellMaterial = 'steel' | 'stainless steel' | 'aluminium' | 'glass-fibre laminate'
export type PartBody = Moving & { readonly kind: 'part put in'; readonly part: Field<string> }
export type ChargerBody = Moving & { readonly kind: 'on-board charger' }
export type InletBody = Moving & { readonly kind: 'AC inlet' }
/** Something of the donor car that stays and is in the way. */
export type StayingBody = Shape & { readonly kind: 'stays in the car'; readonly x: Field; readonly y: Field; readonly z: Field }
export type MovingBody = MotorBody | InverterBody | BoxBody | PartBody | ChargerBody | InletBody
export type Body = MovingBody | StayingBody

export const BLOCK_KINDS = [
  'jacking point',
  'brake or fuel line',
  'drain',
  'hot part',
  'crush zone',
  'belt anchor or seat rail',
  'moving part',
] as const
export type BlockKind = (typeof BLOCK_KINDS)[number]
export type KeptBlock = Block & { readonly kind: BlockKind }
/** A turning shaft, straight from its inner to its outer joint; the outer one goes up and down with its wheel. */
export type KeptShaft = Here & {
  readonly kind: 'shaft'
  readonly fromX: Field
  readonly fromY: Field
  readonly fromZ: Field
  readonly toX: Field
  readonly toY: Field
  readonly toZ: Field
  readonly diameter: Field
  readonly bump: Field
  readonly droop: Field
}
export type KeepOut = KeptBlock | KeptShaft

/** What somebody pulls to cut the power; where it stands in the car. */
type HandleAt = Here & {
  readonly x: Field
  readonly y: Field
  readonly z: Field
  /** Shape it belongs to. */
  readonly partOf: Field<string>
}
export type DriversHandle = HandleAt & { readonly kind: 'main switch of the driver' }
export type OutsideHandle = HandleAt & {
  readonly kind: 'cut point for rescuers' | 'service disconnect'
  readonly space: Field<string>
  readonly reached: Field<StraightWay>
  readonly label: Field<'yes' | 'no'>
}
export type Handle = DriversHandle | OutsideHandle

/** How modules may lie, and what battery boxes take beside them. */
export type Packing = Here & {
  readonly lies: Field<'upright' | 'upright or on a long side' | 'any way but on its head' | 'any way'>
  readonly gap: Field
  readonly serviceFace: Field<'front' | 'rear' | 'left' | 'right' | 'top'>
  readonly serviceRoom: Field
  readonly wall: Field
  readonly material: Field<ShellMaterial>
  readonly plate: Field
  readonly busbars: Field
  readonly lid: Field
  readonly hardware: Field
}
/** A point picked on a scan, as its file counts it, and its place in the car. */
export type ScanPoint = Here & {
  readonly onScanX: Field
  readonly onScanY: Field
  readonly onScanZ: Field
  readonly x: Field
  readonly y: Field
  readonly z: Field
}
/** A scanned surface of the car: a mesh beside the conversion, laid into it by points. */
export type Scan = Here & {
  /** Fingerprint of the file. */
  readonly file: Field<string>
  readonly unit: Field<'mm' | 'cm' | 'm' | 'in' | 'ft'>
  readonly mirrored: Field<'yes' | 'no'>
  readonly points: Named<ScanPoint>
  /** A place in its free space. */
  readonly inside: Here & { readonly x: Field; readonly y: Field; readonly z: Field }
  readonly resolution: Field
  readonly space: Field<string>
}

/** The car on the scales during the build, and what was in it that is not part of it. */
export type OnScales = Here & Scales & { readonly with: Field<string> }

export type Fit = Here & {
  readonly scans: Named<Scan>
  readonly spaces: Named<Space>
  /** A shape whose kind is not said is not there yet. */
  readonly bodies: Named<Body | undefined>
  readonly keepOuts: Named<KeepOut | undefined>
  /** What cuts the power; a handle whose kind is not said is not there yet. */
  readonly handles: Named<Handle | undefined>
  /** Shoulder and arm of the driver, belted. */
  readonly driver: Here & { readonly x: Field; readonly y: Field; readonly z: Field; readonly arm: Field }
  readonly packing: Packing
  /** Outline of the car seen from the side, its corners in the order of their names. */
  readonly profile: Named<Here & { readonly x: Field; readonly z: Field }>
  readonly ends: Here & { readonly front: Field; readonly rear: Field }
  readonly wheels: Here & {
    readonly lock: Field
    readonly steeringOffset: Field
    readonly frontBump: Field
    readonly frontDroop: Field
    readonly rearBump: Field
    readonly rearDroop: Field
  }
  readonly ground: Here & { readonly clearance: Field; readonly approach: Field; readonly departure: Field; readonly ramp: Field }
  readonly springs: Here & {
    readonly front: Field
    readonly rear: Field
    readonly frontNew: Field
    readonly rearNew: Field
    readonly frontRaised: Field
    readonly rearRaised: Field
    readonly tyre: Field
    readonly frontUnsprung: Field
    readonly rearUnsprung: Field
  }
  readonly lifting: Here & { readonly people: Field; readonly hoist: Field }
  readonly stripped: OnScales
  readonly weighed: OnScales & { readonly reckonedFront: Field; readonly reckonedRear: Field }
  readonly lift: Here & { readonly frontPads: Field; readonly rearPads: Field; readonly armRating: Field }
}
