import { descentHeating } from '../../brakes/descent.ts'
import { otherShare } from '../../brakes/force-per-pressure.ts'
import { descentByRoadLoad, motorsOnDescent, warmed } from '../../brakes/motors-braking.ts'
import { heatingRunSpeeds, repeatedStops } from '../../brakes/repeated-stops.ts'
import { rotorHeating } from '../../brakes/rotor-heating.ts'
import type { WheelBrake } from '../../model/brakes.ts'
import type { Conditions } from '../../model/brief.ts'
import type { Model } from '../../model/model.ts'
import { type Figure, standard, type Value } from '../../working/value.ts'
import { type Laden, loadCases } from '../donor/load-cases.ts'
import { type SituationKnown, situation, situationReads } from '../donor/situation.ts'
import type { Situation } from '../donor/situation-figures.ts'
import { recovery } from '../drive/recovery.ts'
import { type TopSpeed, topSpeed } from '../drive/top-speed.ts'
import { from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { type Axle, motorBraking } from './motor-braking.ts'
import { type Split, split } from './split.ts'

const practice = (place: string) => ({ work: 'practice', place, mark: 'common practice' }) as const
const IRON = standard('brake-iron', 'specific heat of cast iron', 'c', 500, 'J/(kg·K)', practice('460 to 540 J/(kg·K)'))
const STOPS = {
  ...standard('heating-run-stops', 'stops of the heating run', 'n', 15, '1', { work: 'eu-71-320', place: 'Annex II 1.3.1' }),
  shows: 'count',
} as const
const EVERY = {
  ...standard('heating-run-interval', 'from one stop to the next', 't_c', 45, 's', { work: 'eu-71-320', place: 'Annex II 1.3.1' }),
  shows: 'time',
} as const
const AIR = {
  ...standard('heating-run-air', 'air of the heating run', 'θ_0', 293.15, 'K', practice('a mild day')),
  shows: 'temperature',
} as const
const REST = {
  ...standard('stand-still', 'standing still', 'v_2', 0, 'm/s', { work: 'definition', place: 'nothing' }),
  shows: 'speed',
} as const
const NO_POWER = {
  ...standard('no-recovery-power', 'motors take nothing', 'P_m', 0, 'W', { work: 'definition', place: 'battery full or cold' }),
  shows: 'power',
} as const

export type Hot = {
  readonly stop: Figure
  readonly run: Figure
}
export type Heat = {
  readonly axles: Readonly<Record<Axle, Hot | Gaps>>
  /** Rotors at the foot of the hill, by friction alone and with the motors. */
  readonly descent: Readonly<Record<Axle, { readonly alone: Figure; readonly helped: Figure | Gaps } | Gaps>>
}
const AXLES = ['front', 'rear'] as const

/** The brief’s usual day, with the load that is taken down the hill. */
const onTheHill = (m: Model): Conditions => ({ ...m.brief.conditions, load: m.brakes.descent.load })
const rotor = (w: WheelBrake) => ({ rotor: w.rotorMass, cooling: w.cooling })

/** How hot discs and drums get in one stop, in the approval’s heating run, and down the longest hill, where the motors help and where they do not. */
export const brakeHeat = study({
  id: 'brake-heat',
  stage: 'brakes & steering',
  asks: 'How hot do the brakes get, and what if the battery is full?',
  reads: (m, ask) => {
    const names = Object.keys(m.brief.loads),
      loads = ask(loadCases),
      shares = ask(split)
    return {
      shares: maybe(shares),
      front: maybe(rotor(m.brakes.front)),
      rear: maybe(rotor(m.brakes.rear)),
      laden: maybe({ each: names.map(name => from(loads, l => ({ laden: l.cases[name] as Laden | Gaps }))) }),
      fastest: maybe(from(ask(topSpeed), t => ({ goals: Object.values(t.goals) }))),
      hill: maybe({
        slope: m.brakes.descent.slope,
        length: m.brakes.descent.length,
        speed: m.brakes.descent.speed,
        on: situationReads(m, ask, onTheHill(m)),
      }),
      motors: maybe({ braking: ask(motorBraking), battery: from(ask(recovery), r => ({ at: r.atBattery })) }),
    }
  },
  answer: (k, make): Heat => {
    const s = k.shares as Split | Gaps,
      part = (axle: Axle): Value | Gaps => (isGaps(s) ? s : axle === 'front' ? s.front : rearPart(make, s.front))
    const parts = { front: part('front'), rear: part('rear') }
    const of = (axle: Axle): Rotor | Gaps => {
      const known = k[axle] as { rotor: Value; cooling: Value } | Gaps,
        share = parts[axle]
      return isGaps(known) ? known : isGaps(share) ? share : { ...known, part: share }
    }
    const rotors = { front: of('front'), rear: of('rear') }
    const speeds = runSpeeds(make, k.laden as Loads | Gaps, k.fastest as { goals: readonly (TopSpeed | Gaps)[] } | Gaps),
      hill = isGaps(k.hill) ? k.hill : downHill(make, k.hill as unknown as HillKnown, k.motors as unknown as Motors | Gaps)
    const each = <T>(f: (axle: Axle, r: Rotor) => T | Gaps): Readonly<Record<Axle, T | Gaps>> =>
      Object.fromEntries(AXLES.map(axle => [axle, isGaps(rotors[axle]) ? rotors[axle] : f(axle, rotors[axle] as Rotor)])) as Record<
        Axle,
        T | Gaps
      >
    return {
      axles: each((axle, r) => (isGaps(speeds) ? speeds : stopsOf(make, axle, r, speeds))),
      descent: each((axle, r) => (isGaps(hill) ? hill : hillOf(make, axle, r, hill))),
    }
  },
})
type Rotor = { readonly rotor: Value; readonly cooling: Value; readonly part: Value }
type Loads = { readonly each: readonly { readonly laden: Laden }[] }
const rearPart = (make: Maker, front: Value): Value =>
  make.work('rear-part', otherShare, { share: front }, { label: 'Share of the friction brakes at the rear' })
const most = <T>(list: readonly T[], by: (x: T) => number): T | undefined =>
  list.reduce<T | undefined>((a, b) => (a === undefined || by(b) > by(a) ? b : a), undefined)

type Speeds = { readonly mass: Value; readonly top: Value; readonly from: Figure; readonly to: Figure }
/** The heaviest load case, and the highest speed found for any goal. */
function runSpeeds(make: Maker, laden: Loads | Gaps, fastest: { goals: readonly (TopSpeed | Gaps)[] } | Gaps): Speeds | Gaps {
  if (isGaps(laden)) return laden
  if (isGaps(fastest)) return fastest
  const heaviest = most(laden.each, l => l.laden.mass.value),
    top = most(
      fastest.goals.flatMap(g => (isGaps(g) ? [] : [g.speed])),
      v => v.value,
    )
  if (!heaviest || !top) return { gaps: fastest.goals.flatMap(g => (isGaps(g) ? g.gaps : [])) }
  return {
    mass: heaviest.laden.mass,
    top,
    ...make.all(
      'run',
      heatingRunSpeeds,
      { top },
      { labels: { from: 'Heating run, speed before each stop', to: 'Heating run, speed after it' } },
    ).figures,
  }
}
function stopsOf(make: Maker, item: Axle, { rotor: r, cooling, part }: Rotor, { mass, top, from: fast, to }: Speeds): Hot {
  const said = (what: string) => ({ energy: `Taken up by all brakes, ${what}, ${item}`, rise: `Rotors warm by, ${what}, ${item}` })
  const once = make.all(
      'stop',
      rotorHeating,
      { mass, from: top, to: REST, part, heat: IRON, rotor: r },
      { item, labels: said('one stop from top speed') },
    ).figures,
    each = make.all(
      'each',
      rotorHeating,
      { mass, from: fast, to, part, heat: IRON, rotor: r },
      { item, labels: said('one stop of the heating run') },
    ).figures
  const run = make.all(
    'repeated',
    repeatedStops,
    { stops: STOPS, each: each.rise, interval: EVERY, cooling, rotor: r, heat: IRON, around: AIR },
    {
      item,
      labels: {
        decay: `Interval over time constant, ${item}`,
        hot: `Rotors after the heating run, ${item}`,
        limit: `Rotors after endless stops, ${item}`,
      },
    },
  ).figures
  return { stop: once.rise, run: run.hot }
}

type HillKnown = { readonly slope: Value; readonly length: Value; readonly speed: Value; readonly on: SituationKnown }
type Motors = { readonly braking: { readonly each: readonly Value[] }; readonly battery: { readonly at: Value } }
type Down = { readonly power: Figure; readonly time: Figure; readonly around: Value; readonly motors: Figure | Gaps }
function downHill(make: Maker, { slope, length, speed, on }: HillKnown, motors: Motors | Gaps): Down {
  const s: Situation = situation(make, on, 'down the hill')
  const { power, time } = make.all(
    'hill',
    descentByRoadLoad,
    { mass: s.mass, speed, slope, length, f0: s.f0, f1: s.f1, f2: s.f2 },
    {
      labels: { power: 'Braking power down the hill', energy: 'Braked away over the hill', time: 'Time down the hill' },
    },
  ).figures
  return {
    power,
    time,
    around: s.temperature,
    motors: isGaps(motors)
      ? motors
      : make.work(
          'hill-motors',
          motorsOnDescent,
          { asked: power, each: motors.braking.each, speed, battery: motors.battery.at },
          { label: 'Taken by the motors down the hill' },
        ),
  }
}
function hillOf(make: Maker, item: Axle, r: Rotor, hill: Down): { alone: Figure; helped: Figure | Gaps } {
  const hot = (key: string, motors: Value, said: string): Figure => {
    const rise = make.work(
      `${key}-rise`,
      descentHeating,
      { power: hill.power, motors, part: r.part, cooling: r.cooling, time: hill.time, rotor: r.rotor, heat: IRON },
      { item, label: `Rotors warm down the hill, ${said}, ${item}` },
    )
    return make.work(key, warmed, { around: hill.around, rise }, { item, label: `Rotors at the foot of the hill, ${said}, ${item}` })
  }
  return {
    alone: hot('alone', NO_POWER, 'battery full'),
    helped: isGaps(hill.motors) ? hill.motors : hot('helped', hill.motors, 'motors braking'),
  }
}
