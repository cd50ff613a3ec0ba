import { totalRatio } from '../../drive/wheel-force.ts'
import type { DriveUnit } from '../../model/drive.ts'
import type { Model } from '../../model/model.ts'
import { GRAVITY } from '../../vehicle/gravity.ts'
import { gripAll, gripFront, gripRear, rearShare } from '../../vehicle/grip.ts'
import { greatestTorque, torqueAtSlip, torqueBehind, torqueThrough } from '../../vehicle/kept-parts.ts'
import { type Fact, type Figure, isGap, type Value } from '../../working/value.ts'
import { type Envelope, envelopes } from '../drive/envelopes.ts'
import { shifts, steps, type TransferRange } from '../drive/ratios.ts'
import { type Ask, from, type Gaps, isGaps, type Known, type Maker, maybe, study } from '../study.ts'
import { type Laden, loadCases } from './load-cases.ts'
import { rolling } from './rolling.ts'
import { heightOf } from './situation.ts'

/** Torque into a kept part: the greatest over the gears used, and the ratio from the motor to the part in that gear. */
export type Into = { readonly torque: Figure; readonly gear: string; readonly ratio: number }
export type KeptParts = {
  readonly box: Into | undefined
  readonly transfer: Into | undefined
  readonly axle: Into | undefined
  /** Motor torque that comes through in every gear of a kept box, used or not, and whether grip is what holds it back. */
  readonly gears: Readonly<Record<string, { readonly torque: Value; readonly slips: boolean }>>
}

type Way = { readonly gear: string | undefined; readonly range: Fact<TransferRange> | undefined }
const range = (value: TransferRange): Fact<TransferRange> => ({
  path: `standard.range-${value}`,
  label: `${value} range`,
  symbol: '',
  unit: '',
  value,
})

/** Every way the torque can take: the gear it is held in, or all where it shifts; with a transfer case the low range too, for it is there to be used. */
function waysOf(m: Model, u: DriveUnit): readonly Way[] {
  const gears = shifts(u) ? Object.keys(m.donor.gearbox.gears) : [isGap(u.gear) ? undefined : u.gear.value]
  if (isGap(u.transfer) || u.transfer.value === 'none') return gears.map(gear => ({ gear, range: undefined }))
  const used = u.transfer.value,
    other = used === 'high' ? ('low' as const) : ('high' as const)
  const partTime = !isGap(m.donor.drivenWheels) && m.donor.drivenWheels.value === 'part-time 4x4',
    ranges = partTime ? [used, other] : [used]
  return gears.flatMap(gear => ranges.map(r => ({ gear, range: range(r) })))
}

function unitReads(m: Model, ask: Ask, name: string, u: DriveUnit) {
  const loads = ask(loadCases),
    ways = waysOf(m, u)
  return {
    envelope: from(ask(envelopes), e => e.units[name] as Envelope | Gaps),
    through: u.through,
    transfer: isGap(u.transfer) ? null : u.transfer,
    ownAxle: isGap(u.finalDrive) ? null : u.finalDrive,
    ways: ways.map(w => [w.gear, w.range && `${w.range.value} range`].filter(Boolean).join(', ')),
    steps: ways.map(w => steps(m, u, w.gear, w.range)),
    gears: ways.map(w => w.gear ?? ''),
    spare: Object.keys(m.donor.gearbox.gears).flatMap(gear =>
      isGap(u.through) || u.through.value !== 'kept gearbox' || ways.some(w => w.gear === gear)
        ? []
        : [maybe({ name: [gear], steps: steps(m, u, gear) })],
    ),
    cases: Object.keys(m.brief.loads).map(c => from(loads, l => ({ laden: l.cases[c] as Laden | Gaps }))),
    grip: m.donor.grip.dry,
    height: heightOf(m, ask),
    wheelbase: m.donor.wheelbase,
    radius: from(ask(rolling), r => r.radius),
  }
}
type UnitKnown = Known<ReturnType<typeof unitReads>>

/** What the new motor puts into parts of the donor car that stay, no more than grip lets through: a box may be saved by wheelspin in first and broken in second. */
export const keptParts = study({
  id: 'kept',
  stage: 'donor',
  asks: 'What do the kept gearbox, transfer case and axle have to take?',
  reads: (m, ask) => {
    const units = Object.entries(m.drive.units).filter(([, u]) => !isGap(u.through) && u.through.value !== 'drive unit')
    return { names: units.map(([name]) => name), units: units.map(([name, u]) => maybe(unitReads(m, ask, name, u))) }
  },
  answer: ({ names, units }, make): { units: Readonly<Record<string, KeptParts | Gaps>> } => ({
    units: Object.fromEntries(units.map((u, i) => [names[i], isGaps(u) ? u : parts(make, u as UnitKnown, names[i] as string)])),
  }),
})

function parts(make: Maker, u: UnitKnown, name: string): KeptParts {
  const e = u.envelope,
    box = u.through.value === 'kept gearbox',
    transferred = u.transfer !== null && u.transfer.value !== 'none'
  const share = gripShare(make, u, e.axle, name)
  const through = (item: string, all: readonly Value[]): { torque: Value; slips: boolean } => {
    const ratio = make.work('ratio', totalRatio, { steps: all }, { item, label: `Total ratio, ${item}` })
    const slip =
      share &&
      make.work(
        'slip',
        torqueAtSlip,
        { share: share.q, mass: share.mass, gravity: GRAVITY, radius: u.radius, ratio, efficiency: e.efficiency },
        { item, label: `Motor torque at which the tyres slip, ${item}` },
      )
    const torque = slip
      ? make.work('input', torqueThrough, { torque: e.peakTorque, slip }, { item, label: `Motor torque that comes through, ${item}` })
      : e.peakTorque
    return { torque, slips: slip !== undefined && slip.value < e.peakTorque.value }
  }
  const gears = u.ways.map((gear, g) => {
    const all = u.steps[g] as unknown as readonly Value[],
      item = gear === '' ? name : `${name} ${gear}`,
      own = u.steps[g]?.length ?? 0,
      { torque, slips } = through(item, all)
    const behind = (key: string, what: string, used: readonly Value[]): { torque: Value; ratio: Value } => {
      const to =
        used.length === 1
          ? (used[0] as Value)
          : make.work(`${key}-ratio`, totalRatio, { steps: used }, { item, label: `Ratio from the motor to the ${what}, ${item}` })
      return { ratio: to, torque: make.work(key, torqueBehind, { torque, ratio: to }, { item, label: `Torque into the ${what}, ${item}` }) }
    }
    return {
      gear,
      slips,
      box: { torque, ratio: undefined },
      transfer: transferred ? behind('transfer', 'transfer case', all.slice(0, 1)) : undefined,
      axle: u.ownAxle === null ? behind('axle', 'axle', all.slice(0, own - 1)) : undefined,
    }
  })
  const worst = (key: string, part: 'box' | 'transfer' | 'axle', label: string): Into | undefined => {
    const list = gears.flatMap(g => {
      const x = g[part]
      return x ? [{ gear: g.gear, torque: x.torque, ratio: x.ratio?.value ?? 1 }] : []
    })
    const most = list.reduce<(typeof list)[number] | undefined>(
      (a, b) => (a === undefined || b.torque.value > a.torque.value ? b : a),
      undefined,
    )
    return (
      most && {
        gear: most.gear,
        ratio: most.ratio,
        torque: make.work(key, greatestTorque, { torques: list.map(x => x.torque) }, { item: name, label: `${label}, ${name}` }),
      }
    )
  }
  return {
    box: box ? worst('into-box', 'box', 'Greatest torque into the gearbox') : undefined,
    transfer: worst('into-transfer', 'transfer', 'Greatest torque into the transfer case'),
    axle: worst('into-axle', 'axle', 'Greatest torque into the axle'),
    gears: Object.fromEntries([
      // Where a gear is used in two ranges, the usual one comes first and counts.
      ...gears.map((g, i) => [u.gears[i] as string, { torque: g.box.torque, slips: g.slips }] as const).reverse(),
      ...u.spare.flatMap(s => {
        if (isGaps(s)) return []
        const gear = s.name[0] as string
        return [[gear, through(`${name} ${gear}`, s.steps as unknown as readonly Value[])] as const]
      }),
    ]),
  }
}

/** Pull by grip over weight with the heaviest load aboard: that lets most torque through. Without a load case grip limits nothing here. */
function gripShare(make: Maker, u: UnitKnown, axle: 'front' | 'rear' | 'both', item: string): { q: Figure; mass: Value } | undefined {
  const loads = u.cases.map(c => c.laden as unknown as Laden)
  if (loads.length === 0) return undefined
  const { mass, rear } = loads.reduce((a, b) => (b.mass.value > a.mass.value ? b : a)),
    label = `Pull by grip over weight, ${item}`
  if (axle === 'both') return { mass, q: make.work('grip', gripAll, { grip: u.grip }, { item, label }) }
  const stand = {
    grip: u.grip,
    rearShare: make.work('rear-share', rearShare, { rear, total: mass }, { item }),
    height: u.height,
    wheelbase: u.wheelbase,
  }
  return { mass, q: make.work('grip', axle === 'front' ? gripFront : gripRear, stand, { item, label }) }
}
