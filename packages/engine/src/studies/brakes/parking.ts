import { forceToHold, leverForce, parkingBrakeHold } from '../../brakes/parking-brake.ts'
import { parkingGrip } from '../../brakes/parking-grip.ts'
import { slopeByHold } from '../../brakes/parking-slope.ts'
import { rearShare } from '../../vehicle/grip.ts'
import { trainMass } from '../../vehicle/road-load.ts'
import { type Figure, isGap, standard, type Value } from '../../working/value.ts'
import { type Laden, loadCases } from '../donor/load-cases.ts'
import { rolling } from '../donor/rolling.ts'
import { heightOf } from '../donor/situation.ts'
import { either, from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { NO_PRINT, newest, prints } from './prints.ts'

const ANNEX_3 = { work: 'un-r13-h', place: 'Annex 3, parking brake of cars', mark: 'from memory' } as const
const BY = {
  hand: { ...standard('parking-by-hand', 'greatest force at a hand lever', 'F_h', 400, 'N', ANNEX_3), shows: 'force' },
  foot: { ...standard('parking-by-foot', 'greatest force at a foot pedal', 'F_h', 500, 'N', ANNEX_3), shows: 'force' },
} as const
const CAR_SLOPE = {
  ...standard('parking-slope-car', 'slope a laden car is held on', 'p', 0.2, '1', ANNEX_3),
  shows: 'slope',
} as const
const TRAIN_SLOPE = {
  ...standard('parking-slope-train', 'slope a whole train is held on', 'p', 0.12, '1', ANNEX_3),
  shows: 'slope',
} as const
const TWO = {
  ...standard('two-branches', 'one cable to each wheel', 'n', 2, '1', { work: 'definition', place: 'two wheels' }),
  shows: 'count',
} as const

export type Parked = {
  /** Slope the brake holds on, and the one asked for: of the car, or of the whole train. */
  readonly slope: Figure
  readonly asked: Value
  readonly train: boolean
  /** Slope by grip of the braked axle, the worse way round. */
  readonly grip: Figure | Gaps
}

/** What the parking brake holds, by the rollers or by lever and cable, under every load and with the trailer on. */
export const parking = study({
  id: 'parking',
  stage: 'brakes & steering',
  asks: 'On which hill does the parking brake hold the car by itself?',
  reads: (m, ask) => {
    const p = m.brakes.parking,
      loads = ask(loadCases)
    const cable = {
      lever: p.leverRatio,
      cable: p.cableEfficiency,
      shoe: p.shoeRatio,
      factor: p.brakeFactor,
      radius: p.radius,
      wheel: from(ask(rolling), r => r.radius),
    }
    const printed = from(ask(prints), a => {
      const last = newest(a.prints, x => !isGaps(x.parking))
      return last && !isGaps(last.parking) ? last.parking.hold : ({ gaps: [] } as Gaps)
    })
    return {
      hold: either(isGaps(printed) ? NO_PRINT : printed, { by: p.by, ...cable }),
      lever: maybe(cable),
      names: Object.keys(m.brief.loads),
      cases: Object.entries(m.brief.loads).map(([name, load]) => {
        const t = isGap(load.trailer) ? undefined : m.trips.trailers[load.trailer.value]
        return maybe({
          laden: from(loads, l => ({ laden: l.cases[name] as Laden | Gaps })),
          trailer: t ? { mass: t.mass, nose: t.noseLoad } : null,
        })
      }),
      grip: maybe({ axle: p.axle, grip: m.donor.grip.dry, height: heightOf(m, ask), wheelbase: m.donor.wheelbase }),
    }
  },
  answer: (k, make): { cases: Readonly<Record<string, Parked | Gaps>> } => {
    const hold = holdOf(make, k.hold as unknown as Value | ByCable)
    return {
      cases: Object.fromEntries(
        k.cases.map((c, i): [string, Parked | Gaps] => {
          const item = k.names[i] as string
          if (isGaps(c)) return [item, c]
          const { laden } = c.laden as unknown as { laden: Laden },
            trailer = c.trailer as { mass: Value; nose: Value } | null
          const mass = trailer
            ? make.work(
                'train',
                trainMass,
                { car: laden.mass, trailer: trailer.mass, nose: trailer.nose },
                { item, label: `Mass of car and trailer, ${item}` },
              )
            : laden.mass
          const asked = trailer ? TRAIN_SLOPE : CAR_SLOPE,
            force = make.work(
              'force',
              forceToHold,
              { mass, slope: asked },
              { item, label: `Force to hold on the slope asked for, ${item}` },
            )
          if (!isGaps(k.lever))
            make.work('lever', leverForce, { hold: force, ...(k.lever as Cable) }, { item, label: `Force at the lever for it, ${item}` })
          return [
            item,
            {
              asked,
              train: trailer !== null,
              slope: make.work('slope', slopeByHold, { hold, mass }, { item, label: `Steepest hill the parking brake holds on, ${item}` }),
              grip: isGaps(k.grip) ? k.grip : byGrip(make, item, laden, k.grip as unknown as Gripped),
            },
          ]
        }),
      ),
    }
  },
})
type Cable = {
  readonly lever: Value
  readonly cable: Value
  readonly shoe: Value
  readonly factor: Value
  readonly radius: Value
  readonly wheel: Value
}
type ByCable = Cable & { readonly by: { readonly value: 'hand' | 'foot' } }
function holdOf(make: Maker, hold: Value | ByCable): Value {
  if (!('by' in hold)) return hold
  const { by, ...cable } = hold
  return make.all(
    'hold',
    parkingBrakeHold,
    { hand: BY[by.value], branches: TWO, ...cable },
    {
      labels: {
        cable: 'Pull of one cable',
        shoe: 'Force on the shoes of one wheel',
        torque: 'Torque of one wheel, parked',
        hold: 'Hold of the parking brake',
      },
    },
  ).figures.hold
}
type Gripped = {
  readonly axle: { readonly value: 'front' | 'rear' }
  readonly grip: Value
  readonly height: Value
  readonly wheelbase: Value
}
function byGrip(make: Maker, item: string, { mass, rear }: Laden, { axle, grip, height, wheelbase }: Gripped): Figure {
  const share = make.work('rear-share', rearShare, { rear, total: mass }, { item, label: `Share on the rear axle, ${item}` })
  const { figures } = make.all(
    'grip',
    parkingGrip,
    { grip, rearShare: share, height, wheelbase },
    {
      item,
      labels: {
        rearDown: `By grip, rear axle held, nose down, ${item}`,
        rearUp: `By grip, rear axle held, nose up, ${item}`,
        frontDown: `By grip, front axle held, nose down, ${item}`,
        frontUp: `By grip, front axle held, nose up, ${item}`,
      },
    },
  )
  return axle.value === 'rear' ? figures.rearDown : figures.frontUp
}
