import type { Part } from '@ampwright/catalogue'
import type { Edit } from '@ampwright/conversion'
import { BOX_SHARE, isGap, type Model, type Value } from '@ampwright/engine'
import { type Base, namesAt, nodeAt, type Space, spaces } from './base.ts'
import { handlesLeft } from '../handles-left.ts'
import { classFigure } from './class-figures.ts'
import type { DriveRung, Motor } from './drive-rungs.ts'
import type { ConceptKind } from './layouts.ts'
import type { PackRung } from './pack-rungs.ts'
import * as plan from './planned.ts'
import { bmsFor, putIns } from './put-in.ts'
import { removedEdits } from './removed.ts'

/** Everything a concept decides. */
export type Design = {
  readonly kind: ConceptKind
  readonly drive: DriveRung
  readonly gear?: string
  /** Reduction of a single reduction. */
  readonly reduction?: number
  readonly pack: PackRung
  /** Share of the modules where the engine was; the others go where the tank was. */
  readonly bayShare: number
  readonly charger: Part
  /** Limits a rule asked for. */
  readonly limits: readonly Edit[]
}

type Fields = Readonly<Record<string, string | undefined>>
const under = (path: string, fields: Fields): readonly Edit[] =>
  Object.entries(fields).flatMap(([key, now]) => (now === undefined ? [] : [{ path: `${path}.${key}`, now }]))
const row = (path: string, fields: Fields): Edit => ({
  path,
  now: Object.fromEntries(Object.entries(fields).flatMap(([k, v]) => (v === undefined ? [] : [[k, v]]))),
})
const rounded = (x: number, digits = 3): number => Number(x.toPrecision(digits))
const placed = (v: Value | undefined): string | undefined => (v === undefined ? undefined : `${Math.round(v.value * 1000)} mm`)
/** What a motor gives for long, where its class states nothing. */
function lasting({ part }: Motor): string | undefined {
  const peak = classFigure(part, 'peak-power')
  if (peak === undefined || part.fields['continuous-power'] || part.fields['continuous-torque']) return undefined
  return plan.lastingPower(rounded((peak * plan.LASTING_SHARE.value) / 1000), rounded((peak * plan.LASTING_SHARE.half) / 1000))
}

/** Keys of the pack that say how it is used, not how it is built. */
const USE = new Set(['life', 'standing', 'note'])
/** What an earlier plan decided, put aside. */
function cleared(base: Base): readonly Edit[] {
  const gone = (...path: readonly string[]): readonly Edit[] => (nodeAt(base, ...path) ? [{ path, now: null }] : [])
  const planned = Object.keys(base.model.drive.units).length > 0
  return [
    ...gone('drive', 'units'),
    ...gone('drive', 'front-share'),
    ...gone('drive', 'regeneration'),
    ...namesAt(base, 'pack').flatMap(key => (USE.has(key) ? [] : gone('pack', key))),
    ...['charger', 'inlet', 'dc', 'taper'].flatMap(key => gone('charging', key)),
    // A circuit belongs to the boxes and units it joins.
    ...gone('high-voltage'),
    ...(planned || namesAt(base, 'donor', 'added').length === 0 ? gone('donor', 'added') : []),
    ...(planned ? gone('donor', 'not-listed') : []),
    ...shapesGone(base),
  ]
}

/** Shapes of what is put aside; what stays in the car keeps its own. */
function shapesGone(base: Base): readonly Edit[] {
  const names = namesAt(base, 'fit', 'bodies')
  const stays = (name: string): boolean => {
    const kind = nodeAt(base, 'fit', 'bodies', name, 'kind')
    return kind?.kind === 'value' && kind.source === 'stays in the car'
  }
  const going = names.filter(name => !stays(name)),
    handles = handlesLeft(base.model, going)
  if (going.length === names.length) return names.length ? [...handles, { path: ['fit', 'bodies'], now: null }] : []
  return [...handles, ...going.map(name => ({ path: ['fit', 'bodies', name], now: null }))]
}

/** The concept as edits of the file, in an order that can be applied. */
export function conceptEdits(base: Base, d: Design): readonly Edit[] {
  const { model } = base
  return [
    ...cleared(base),
    ...removedEdits(model, d.kind),
    ...assists(model),
    ...driveEdits(model, d),
    ...packEdits(model, d),
    ...chargingEdits(model, d),
    ...addedEdits(base, d),
    ...d.limits,
  ]
}

/** What the engine drove gets a motor of its own. */
function assists({ donor: { brakes, steering } }: Model): readonly Edit[] {
  const open = (after: typeof brakes.assistAfter | typeof steering.assistAfter): boolean => isGap(after) || after.value === 'none'
  return [
    ...(!isGap(brakes.assist) && brakes.assist.value === 'vacuum' && open(brakes.assistAfter)
      ? [{ path: 'donor.brakes.assist-after', now: 'vacuum pump' }]
      : []),
    ...(!isGap(steering.assist) && steering.assist.value === 'hydraulic' && open(steering.assistAfter)
      ? [{ path: 'donor.steering.assist-after', now: 'electro-hydraulic' }]
      : []),
  ]
}

const THROUGH = {
  'drive unit': 'drive unit',
  'two drive units': 'drive unit',
  'kept gearbox, one gear': 'kept gearbox',
  'kept gearbox, shifting': 'kept gearbox',
  'single reduction': 'single reduction',
} as const

function driveEdits(m: Model, d: Design): readonly Edit[] {
  const { kind } = d,
    two = kind.way === 'two drive units'
  const unit = (name: string, axle: string, motor: Motor): readonly Edit[] => {
    const at = `drive.units.${name}`,
      whole = THROUGH[kind.way] === 'drive unit',
      x = whole
        ? axle === 'front'
          ? '0 mm'
          : isGap(m.donor.wheelbase)
            ? undefined
            : placed(m.donor.wheelbase)
        : placed(spaces(m).find(s => s.where === 'engine bay')?.x)
    return [
      ...under(at, {
        part: whole ? motor.part.id : undefined,
        axle,
        through: THROUGH[kind.way],
        gear: d.gear,
        shifting: kind.way === 'kept gearbox, shifting' ? 'with clutch' : 'held in one gear',
        transfer: kind.transfer && m.donor.transferCase.given ? 'high' : 'none',
        reduction: d.reduction === undefined ? undefined : String(rounded(d.reduction)),
      }),
      row(`${at}.motor`, { part: whole ? undefined : motor.part.id, 'peak-time': plan.peakTime(), 'continuous-power': lasting(motor), x }),
      ...(motor.inverter ? [row(`${at}.inverter`, { part: motor.inverter.id, x })] : []),
    ]
  }
  const [first, second = first] = d.drive
  const units = two
    ? [...unit('front', 'front', first), ...unit('rear', 'rear', second), { path: 'drive.front-share', now: '50 %' }]
    : unit('main', kind.axle, first)
  return [
    ...units,
    row('drive.regeneration', {
      'torque-share': '30 %',
      power: `${Math.floor(halfHourPower(d.pack) / 1000)} kW`,
      'cut-off-speed': '8 km/h',
    }),
  ]
}
/** Recovery planned no stronger than half the hour rate: a pack that is not cooled by liquid. */
const halfHourPower = (p: PackRung): number =>
  ((p.charge * p.strings) / 3600 / 2) * p.cells * ((plan.NICKEL.lowest + plan.NICKEL.highest) / 2)

function packEdits(m: Model, { pack: p, bayShare }: Design): readonly Edit[] {
  const ampereHours = p.charge / 3600
  return [
    ...under('pack.module', {
      part: p.part.id,
      state: 'used',
      'peak-current': plan.peakCurrent(rounded(ampereHours * plan.NICKEL.peak)),
      'peak-time': plan.peakTime(),
      'continuous-current': plan.lastingCurrent(rounded(ampereHours * plan.NICKEL.lasting)),
      'charge-current': plan.chargeCurrent(rounded(ampereHours * plan.NICKEL.charge)),
    }),
    ...under('pack', {
      'modules-in-series': String(p.inSeries),
      strings: String(p.strings),
      'cell-lowest': plan.cellVoltage(plan.NICKEL.lowest),
      'cell-highest': plan.cellVoltage(plan.NICKEL.highest),
      'charge-to': `${plan.NICKEL.highest} V`,
      compression: 'module housing',
    }),
    row('pack.bms', {
      part: bmsFor(p.cells).id,
      cells: p.strings > 1 ? plan.cellsWatched(p.cells * p.strings) : undefined,
      fitted: 'yes',
      'controls-charger': 'yes',
      'limits-drive': 'by lowest cell',
      'counts-charge': 'yes',
      'watches-rest': 'yes',
      'watches-temperature': 'yes',
    }),
    ...boxes(p, spaces(m), bayShare),
  ]
}

function boxes(p: PackRung, free: readonly Space[], bayShare: number): readonly Edit[] {
  const bay = free.length > 1 ? Math.round(p.modules * bayShare) : p.modules,
    each = p.mass / p.modules
  return free.flatMap((space, i): readonly Edit[] => {
    const modules = i === 0 ? bay : p.modules - bay
    if (modules === 0) return []
    const mass = modules * each
    return [
      row(`pack.boxes.${space.where === 'engine bay' ? 'engine-bay' : 'tank-space'}`, {
        modules: String(modules),
        x: placed(space.x),
        z: placed(space.z),
        overhead: plan.boxOverhead(rounded(mass * BOX_SHARE.value), rounded(mass * BOX_SHARE.half)),
        where: space.where,
      }),
    ]
  })
}

/** Where inlets of the first kind are usual. */
const TYPE_1 = new Set(['us', 'ca', 'ca-qc', 'jp'])
function chargingEdits(m: Model, { pack: p, charger }: Design): readonly Edit[] {
  const power = classFigure(charger, 'power') as number,
    phases = classFigure(charger, 'phases') as number,
    middle = p.cells * ((plan.NICKEL.lowest + plan.NICKEL.highest) / 2)
  const type = !isGap(m.brief.rules) && TYPE_1.has(m.brief.rules.value) && phases === 1 ? 1 : 2,
    current = power / phases / 230 > 16 ? 32 : 16
  return [
    ...under('charging.charger', {
      part: charger.id,
      current: plan.chargerCurrent(rounded(power / middle, 2)),
      'set-to': `${rounded(p.cells * plan.NICKEL.highest, 4)} V`,
    }),
    row('charging.inlet', { part: `charge-inlet-type${type}-${current}a-${phases}ph@1` }),
  ]
}

function addedEdits({ model }: Base, { kind, pack }: Design): readonly Edit[] {
  const there = Object.keys(model.drive.units).length > 0 ? [] : Object.keys(model.donor.added)
  return putIns(model, kind, pack)
    .filter(p => !there.some(name => p.called.test(name)))
    .map(p => row(`donor.added.${p.name}`, p.row))
}
