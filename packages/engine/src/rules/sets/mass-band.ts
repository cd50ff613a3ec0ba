import {
  type Band,
  bandOf,
  type Caveat,
  type Comparison,
  changeFromDonor,
  compared,
  demandPositive,
  type Item,
  lies,
  ratioToDonor,
  type Statement,
  stated,
} from './comparison.ts'
import type { Limits } from './sets.ts'

/** Driver in the mass in running order [kg] and share of a full tank; Regulation (EU) No 1230/2012 Art. 2 (from memory). */
const DRIVER = 75
const FUEL_SHARE = 0.9

/** Which mass a figure is. Before a division both sides have to be the same. */
export type MassBasis = 'running order' | 'unladen' | 'weighed'

export type KerbMasses = {
  /** Basis of both masses. */
  readonly basis: MassBasis
  /** Donor [kg]. */
  readonly donor: number
  /** Finished car [kg]. */
  readonly converted: number
  readonly goods?: boolean
}

/** Masses on both axles [kg], all on one basis. */
export type AxleMasses = { readonly front: number; readonly rear: number }

/**
 * Mass in running order [kg] from an owner's weighing without driver: the fuel in it comes out, nine tenths of a full tank and the
 * driver go in. A car without a tank has `fuelWeighed` and `fuelFull` zero. Masses in kg.
 */
export function massInRunningOrder(car: { readonly weighed: number; readonly fuelWeighed: number; readonly fuelFull: number }): number {
  demandPositive({ weighed: car.weighed })
  return car.weighed - car.fuelWeighed + FUEL_SHARE * car.fuelFull + DRIVER
}

/** New kerb mass over that of the donor. Weighed masses are compared all the same, with a caveat. */
export function kerbMassRatio(limits: Limits, masses: KerbMasses): Comparison | Statement | undefined {
  const limit = limits('mass.kerb.ratio', masses.goods ? 'goods' : undefined)
  if (!limit) return undefined
  return ratioToDonor(limit, { ...massPair(masses) })
}

/** Change of kerb mass that starts an approval. */
export function kerbMassChange(limits: Limits, masses: KerbMasses): Comparison | Statement | undefined {
  const limit = limits('mass.kerb.change.trigger')
  if (!limit) return undefined
  return changeFromDonor(limit, { ...massPair(masses) })
}

/**
 * Share of mass on each axle against the donor.
 *
 * "Ten per cent of the share" can be read as a ratio (share times 0.9 to 1.1) or as points (share ± 0.1). Judged by the ratio, the
 * stricter of the two; a share between the readings carries the reason for calling it marginal. Both axles have to hold.
 */
export function axleShare(
  limits: Limits,
  { donor, converted }: { readonly donor: AxleMasses; readonly converted: AxleMasses },
): readonly (Comparison | Statement)[] {
  const limit = limits('axle.share.shift')
  if (!limit) return []
  const { value } = limit.requirement
  if (typeof value !== 'number') return [stated(limit)]
  demandPositive({ donorFront: donor.front, donorRear: donor.rear })
  const shift = value / 100
  return AXLES.map(([item, axle]) => {
    const before = donor[axle] / (donor.front + donor.rear)
    const found = converted[axle] / (converted.front + converted.rear)
    const strict = { low: before * (1 - shift), high: before * (1 + shift) }
    const wider = { low: before - shift, high: before + shift }
    const between = !lies(found, strict) && lies(found, wider)
    return compared(limit, {
      item,
      role: 'limit',
      found,
      ...strict,
      wider,
      unit: '1',
      ...(between ? { marginalReason: 'within-wider-reading' } : {}),
      caveats: ['share-has-two-readings'],
    })
  })
}

/**
 * Mass on each axle and in all, up to which crash proof of the donor still counts.
 *
 * The band on the axles is read as kilograms on each axle; it may mean the share. Both conditions hold together, and only if the
 * donor was approved to the crash regulations at all.
 */
export function axleMassBand(
  limits: Limits,
  { donor, converted }: { readonly donor: AxleMasses; readonly converted: AxleMasses },
): readonly Comparison[] {
  const axles = limits('axle.share.crash-equivalence')
  const whole = limits('mass.total.crash-equivalence')
  demandPositive({ donorFront: donor.front, donorRear: donor.rear, front: converted.front, rear: converted.rear })
  const perAxle = axles ? bandOf(axles.requirement) : undefined
  const perCar = whole ? bandOf(whole.requirement) : undefined
  const caveats: readonly Caveat[] = ['axle-band-may-mean-share']
  return [
    ...(axles && perAxle
      ? AXLES.map(([item, axle]) => compared(axles, { ...riseIn(item, donor[axle], converted[axle], perAxle), caveats }))
      : []),
    ...(whole && perCar ? [compared(whole, riseIn('total', donor.front + donor.rear, converted.front + converted.rear, perCar))] : []),
  ]
}

/** Rise of the front axle load of a goods vehicle. */
export function frontAxleRise(
  limits: Limits,
  { donor, converted }: { readonly donor: AxleMasses; readonly converted: AxleMasses },
): Comparison | undefined {
  const limit = limits('axle.front.rise')
  const band = limit ? bandOf(limit.requirement) : undefined
  if (!limit || !band) return undefined
  demandPositive({ donorFront: donor.front, front: converted.front })
  return compared(limit, { ...riseIn('front axle', donor.front, converted.front, band), role: 'limit' })
}

const AXLES = [
  ['front axle', 'front'],
  ['rear axle', 'rear'],
] as const

function massPair({ basis, donor, converted }: KerbMasses) {
  demandPositive({ donor, converted })
  const caveats: readonly Caveat[] = basis === 'weighed' ? ['mass-as-weighed'] : []
  return { found: converted, donor, unit: 'kg', caveats }
}

function riseIn(item: Item, donor: number, converted: number, { low, high }: Band) {
  const limit = (end: number | undefined, name: 'low' | 'high') => (end === undefined ? {} : { [name]: donor * (1 + end / 100) })
  return {
    item,
    role: 'equivalence' as const,
    found: (100 * (converted - donor)) / donor,
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
    unit: '%',
    quantity: { found: converted, ...limit(low, 'low'), ...limit(high, 'high'), unit: 'kg' },
  }
}
