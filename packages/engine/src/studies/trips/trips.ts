import type { Trip } from '../../model/trips.ts'
import { distanceShare, energyShare, powerOfCurrent, recoveryRoom, wallConsumption } from '../../trip/consumption.ts'
import { throttledFrom } from '../../trip/inverter-heat.ts'
import type { TripTraces } from '../../trip/plan.ts'
import { tripOfOne, tripOfOneCoarse, tripOfTwo, tripOfTwoCoarse } from '../../trip/trip.ts'
import type { Figure, Value } from '../../working/value.ts'
import type { PackFigures } from '../pack/pack-figures.ts'
import { packModel } from '../pack/pack-model.ts'
import { type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { journey, journeyReads } from './journey.ts'
import type { Journey } from './journey-figures.ts'

type TripFigures = { readonly [K in keyof (typeof tripOfOne)['card']['gives']]: Figure }
export type TripAnswer = {
  readonly figures: TripFigures
  readonly missed: Figure
  readonly throttledFrom: Figure
  readonly wall: Figure | Gaps
  /** The one gear the trip is reckoned in, where the box is shifted. */
  readonly gear: string | undefined
}

/** Where the energy went, in the order it gets lost. */
const FLOW = [
  'to-battery',
  'to-cabin',
  'to-other',
  'to-motors',
  'to-driveline',
  'to-idle',
  'to-rolling',
  'to-air',
  'to-slope',
  'to-brakes',
  'to-motion',
] as const

/** Every trip of the file, driven once from full at 10 Hz. */
export const trips = study({
  id: 'trip',
  stage: 'drive',
  asks: 'What does each trip take, where does the energy go, what gets hot, what can the car not do?',
  reads: (m, ask) => ({
    names: Object.keys(m.trips.named),
    trips: Object.values(m.trips.named).map(t => maybe(t ? journeyReads(m, ask, t as Trip) : { gaps: [] })),
    pack: maybe({ pack: ask(packModel), set: m.drive.regeneration.power }),
    wall: maybe({ power: m.charging.charger.power, efficiency: m.charging.charger.efficiency, standing: m.charging.charger.standingPower }),
  }),
  answer: ({ names, trips: list, pack, wall }, make): { trips: Readonly<Record<string, TripAnswer | Gaps>>; recovery: Figure | Gaps } => ({
    recovery: isGaps(pack) ? pack : recoveryPower(make, pack as never),
    trips: Object.fromEntries(
      list.map((k, i): [string, TripAnswer | Gaps] => {
        const item = names[i] as string
        if (isGaps(k)) return [item, k]
        const ready = journey(make, k as never, item),
          { figures, run } = driven(make, ready, item)
        keep(make, figures, run.traces, item, ready.units)
        const missed = make.work(
          'share-missed',
          distanceShare,
          { part: figures['distance-missed'], whole: figures.distance },
          { item, label: `Share of ${item} missed`, symbol: 's_miss' },
        )
        const throttled = make.work(
          'throttled-from',
          throttledFrom,
          { limits: ready.inputs.windingLimit },
          { item, label: `Motors are throttled from, ${item}` },
        )
        return [
          item,
          {
            figures,
            missed,
            throttledFrom: throttled,
            gear: ready.gear,
            wall: isGaps(wall)
              ? wall
              : make.work(
                  'wall-consumption',
                  wallConsumption,
                  { battery: figures.consumption, ...wall },
                  { item, label: `Consumption at the wall, charger at full power, ${item}` },
                ),
          },
        ]
      }),
    ),
  }),
})

/** What warm cells take of recovery, and how far that lies above its setting. */
function recoveryPower(make: Maker, { pack, set }: { pack: PackFigures; set: Value }): Figure {
  const cells = make.work(
    'recovery-power',
    powerOfCurrent,
    { current: pack.chargeCurrent, voltage: pack.highestVoltage },
    { label: 'Power warm cells take' },
  )
  make.work('recovery-room', recoveryRoom, { cells, set }, { label: 'Power warm cells take beyond what recovery is set to' })
  return cells
}

function driven(make: Maker, { inputs, second }: Journey, item: string): { figures: TripFigures; run: { traces: TripTraces } } {
  const done = second
    ? make.all('', tripOfTwo, { ...inputs, ...second }, { item, labels: labels(item), rerun: x => tripOfTwoCoarse(x as never) })
    : make.all('', tripOfOne, inputs, { item, labels: labels(item), rerun: x => tripOfOneCoarse(x as never) })
  return done as unknown as { figures: TripFigures; run: { traces: TripTraces } }
}
const labels = (item: string) =>
  Object.fromEntries(Object.entries(tripOfOne.card.gives).map(([key, one]) => [key, `${one.label}, ${item}`]))

/** The flow of energy as a table, and the series of the chart. */
function keep(make: Maker, figures: TripFigures, t: TripTraces, item: string, units: readonly string[]): void {
  make.table(
    'energy',
    {
      label: `Where the energy went, ${item}`,
      columns: [
        { key: 'energy', label: 'energy', unit: 'J', shows: 'energy' },
        { key: 'share', label: 'share', unit: '1', shows: 'share' },
      ],
      rows: FLOW.map(key => ({
        name: tripOfOne.card.gives[key].label,
        cells: {
          energy: figures[key],
          share: make.work(
            `share-${key}`,
            energyShare,
            { part: figures[key], whole: figures['from-charge'] },
            { item, label: `${tripOfOne.card.gives[key].label}, share, ${item}` },
          ),
        },
      })),
    },
    item,
  )
  const [, pack, , winding, inverter, , otherWinding, otherInverter] = t.temperatures
  const of = (i: number): string => (units.length > 1 ? ` of ${units[i]}` : '')
  const heat = (name: string, label: string, values: Float64Array | undefined) => (values ? [{ name, label, unit: 'K', values }] : [])
  make.trace(
    'course',
    {
      label: `Course of ${item}`,
      axis: { label: 'time', unit: 's', values: t.times },
      series: [
        { name: 'speed', label: 'speed', unit: 'm/s', values: t.speeds },
        { name: 'distance', label: 'distance', unit: 'm', shows: 'distance', values: t.distances },
        { name: 'force', label: 'force at the wheels', unit: 'N', values: t.forces },
        { name: 'power', label: 'power at the battery', unit: 'W', values: t.powers },
        { name: 'current', label: 'current', unit: 'A', values: t.currents },
        { name: 'voltage', label: 'voltage', unit: 'V', values: t.voltages },
        { name: 'charge', label: 'charge', unit: '1', shows: 'share', values: t.charges },
        ...heat('cells', 'cells', pack),
        ...heat('winding', `winding${of(0)}`, winding),
        ...heat('inverter', `inverter${of(0)}`, inverter),
        ...heat('winding-2', `winding${of(1)}`, otherWinding),
        ...heat('inverter-2', `inverter${of(1)}`, otherInverter),
      ],
    },
    item,
  )
}
