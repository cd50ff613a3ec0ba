import type { Trailer } from '../../model/trips.ts'
import { axleShare } from '../../vehicle/against-donor.ts'
import { otherAxle } from '../../vehicle/mass-and-axles.ts'
import { axlesBraking, couplingPush, decelerationWithTrailer, noseLoadBraking, noseLoadOnAxles } from '../../vehicle/towing.ts'
import { type Field, type Figure, type Gap, isGap, standard, type Value } from '../../working/value.ts'
import { from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { type Laden, loadCases } from './load-cases.ts'
import { heightOf } from './situation.ts'
import { towing } from './train.ts'

const HARD = {
  ...standard('braking-with-trailer', 'Hard braking with a trailer', 'a', 5, 'm/s²', {
    work: 'practice',
    place: 'about half of g, what a good trailer brake follows',
    mark: 'common practice',
  }),
  shows: 'acceleration',
} as const
const UNBRAKED = standard('unbraked-trailer', 'A trailer without brakes', 'F_t', 0, 'N', { work: 'definition', place: 'no brakes' })

export type TrainBraking = {
  readonly trailer: string
  readonly nose: Figure | Gaps
  readonly front: Figure | Gaps
  readonly rear: Figure | Gaps
  /** With a trailer that has no brakes; none where it has. */
  readonly deceleration: Figure | Gaps | null
}

const forceOf = (t: Trailer): Field | Value => (isGap(t.braked) ? t.braked : t.braked.value === 'yes' ? t.brakeForce : UNBRAKED)

/** What a trailer does to the car while both brake: it pushes, presses on the coupling, and lengthens the stop where it has no brakes. */
export const trainBraking = study({
  id: 'train-braking',
  stage: 'donor',
  asks: 'What does the trailer do to the car while it brakes?',
  reads: (m, ask) => {
    const pulled = towing(m.brief.loads),
      loads = ask(loadCases)
    return {
      names: pulled.map(([name, trailer]) => ({ name, trailer })),
      cases: pulled.map(([name, trailer]) => {
        const t: Trailer | undefined = m.trips.trailers[trailer]
        if (!t) {
          const gap: Gap = { gap: true, path: `trips.trailers.${trailer}`, label: `trailer ${trailer}`, until: 'any time', why: 'missing' }
          return { leaning: maybe(gap), stopping: null }
        }
        const unbraked = !isGap(t.braked) && t.braked.value === 'no'
        const car = {
          laden: from(loads, l => l.cases[name] as Laden | Gaps),
          trailer: t.mass,
          nose: t.noseLoad,
          wheelbase: m.donor.wheelbase,
          overhang: m.donor.towing.couplingOverhang,
        }
        return {
          leaning: maybe({
            car,
            own: forceOf(t),
            height: t.centreHeight,
            reach: t.axleDistance,
            coupling: m.donor.towing.couplingHeight,
            carHeight: heightOf(m, ask),
          }),
          stopping: unbraked ? maybe({ car, alone: m.donor.brakes.deceleration }) : null,
        }
      }),
    }
  },
  answer: ({ names, cases }, make): { cases: Readonly<Record<string, TrainBraking>> } => ({
    cases: Object.fromEntries(
      cases.map((c, i): [string, TrainBraking] => {
        const { name, trailer } = names[i] as { name: string; trailer: string }
        const known = isGaps(c.leaning) ? (c.stopping === null || isGaps(c.stopping) ? undefined : c.stopping.car) : c.leaning.car
        const car = known && carAlone(make, name, known as Coupled)
        const deceleration =
          c.stopping === null || isGaps(c.stopping) || !car
            ? (c.stopping as Gaps | null)
            : make.work(
                'deceleration',
                decelerationWithTrailer,
                { alone: c.stopping.alone, mass: car.mass, trailer: c.stopping.car.trailer as Value },
                { item: name },
              )
        if (isGaps(c.leaning) || !car)
          return [name, { trailer, nose: c.leaning as Gaps, front: c.leaning as Gaps, rear: c.leaning as Gaps, deceleration }]
        return [name, { trailer, ...leaning(make, name, car, c.leaning as Leaning), deceleration }]
      }),
    ),
  }),
})

type Coupled = {
  readonly laden: Laden
  readonly trailer: Value
  readonly nose: Value
  readonly wheelbase: Value
  readonly overhang: Value
}
type Leaning = {
  readonly car: Coupled
  readonly own: Value
  readonly height: Value
  readonly reach: Value
  readonly coupling: Value
  readonly carHeight: Value
}
type Alone = { readonly mass: Figure; readonly rearShare: Figure }

/** The load case holds the nose load; a sum over what the trailer does starts from the car without it. */
function carAlone(make: Maker, item: string, { laden, nose, wheelbase, overhang }: Coupled): Alone {
  const { figures } = make.all('nose-load', noseLoadOnAxles, { nose, wheelbase, overhang }, { item })
  const mass = make.work('car', otherAxle, { total: laden.mass, one: nose }, { item, label: `Car without nose load, ${item}` })
  const rear = make.work('car-rear', otherAxle, { total: laden.rear, one: figures.rear }, { item, label: `Its rear axle, ${item}` })
  const front = make.work('car-front', otherAxle, { total: mass, one: rear }, { item, label: `Its front axle, ${item}` })
  return {
    mass,
    rearShare: make.work('rear-share', axleShare, { axle: rear, other: front }, { item, label: `Its share on the rear axle, ${item}` }),
  }
}

function leaning(
  make: Maker,
  item: string,
  { mass, rearShare }: Alone,
  { car, own, height, reach, coupling, carHeight }: Leaning,
): Pick<TrainBraking, 'nose' | 'front' | 'rear'> {
  const { trailer, wheelbase, overhang } = car,
    deceleration = HARD
  const push = make.work('push', couplingPush, { trailer, deceleration, own }, { item })
  const nose = make.work('nose', noseLoadBraking, { trailer, nose: car.nose, deceleration, height, own, coupling, reach }, { item })
  const { figures } = make.all(
    'braking',
    axlesBraking,
    { mass, rearShare, deceleration, height: carHeight, wheelbase, nose, overhang, push, coupling },
    { item, labels: { front: `Front axle while braking, ${item}`, rear: `Rear axle while braking, ${item}` } },
  )
  return { nose, front: figures.front, rear: figures.rear }
}
