import { at, type Curve, curve, root, solveOde } from '../numerics/index.ts'
import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { type CableInAir, conductorHeat, heatAtSurface } from './cable-heat.ts'
import { COPPER } from './conductor-metals.ts'
import { amps, heatPerMetre, heatPerVolume, length, MM, MM2, many, practice, seconds, section } from './conductor-symbols.ts'

/** Heat of cable insulation by volume. */
export const INSULATION_HEAT = standard(
  'insulation-heat',
  'heat of cable insulation by volume',
  'c_i',
  2e6,
  'J/(m³·K)',
  practice('cable insulation'),
)

/** Heat a metre of cable takes up for each kelvin, conductor and insulation as one. */
export const cableHeatCapacity = formula(
  {
    id: 'cable-heat-capacity',
    label: 'Heat capacity of a metre of cable',
    gives: heatPerMetre('C′', 'heat capacity by length'),
    takes: {
      section: section('S', 'conductor'),
      conductor: length('d', 'conductor, diameter'),
      outside: length('D', 'jacket, diameter'),
      insulation: heatPerVolume('c_i', 'insulation'),
    },
    uses: [COPPER.heat],
    text: 'C′ = c_Cu · S + c_i · π · (D² − d²) / 4',
    source: { work: 'heat', place: 'sum of two bodies' },
    proof: {
      examples: [
        {
          takes: { section: 35 * MM2, conductor: 8.2 * MM, outside: 12.5 * MM, insulation: 2e6 },
          gives: 260.6,
          within: 0.05,
          source: { work: 'heat', place: '35 mm² of 8.2 and 12.5 mm; recomputed' },
        },
      ],
    },
  },
  ({ section, conductor, outside, insulation }) =>
    COPPER.heat.value * section + (insulation * Math.PI * (outside ** 2 - conductor ** 2)) / 4,
)

/** The steady current that heats as a profile does. Too kind where the profile is longer than about a fifth of the cable's time constant. */
export const rmsCurrent = formula(
  {
    id: 'rms-current',
    label: 'Current that heats as a profile does',
    gives: amps('I_rms', 'root of the mean square'),
    takes: { currents: many(amps('I_i', 'current of a stretch')), times: many(seconds('t_i', 'its time')) },
    text: 'I_rms = √(Σ I_i² · t_i / Σ t_i)',
    source: { work: 'circuits', place: 'root of the mean square' },
    leavesOut: 'The swing about the mean: peaks that last minutes are followed in time instead.',
    proof: {
      examples: [
        {
          takes: { currents: [400, 150], times: [10, 50] },
          gives: 213.1,
          within: 0.05,
          source: { work: 'circuits', place: '400 A for 10 s, 150 A for 50 s; recomputed' },
        },
        {
          takes: { currents: [500, 350, 200], times: [10, 100, 490] },
          gives: 239.27,
          within: 0.005,
          source: { work: 'circuits', place: '500 A for 10 s, 350 A for 100 s, 200 A for 490 s; recomputed' },
        },
      ],
    },
  },
  ({ currents, times }) => {
    let squares = 0,
      time = 0
    for (const [i, t] of times.entries()) {
      squares += (currents[i] as number) ** 2 * t
      time += t
    }
    return Math.sqrt(squares / time)
  },
)

/** A cable that warms: as in still air, with its heat capacity [J/(m·K)] by length. */
export type WarmingCable = CableInAir & { readonly heatCapacity: number }
/** A stretch of a load: current [A] held for a time [s]. */
export type Stretch = { readonly current: number; readonly time: number }
export type Warming = {
  /** Ends of the stretches, the start included [s], and the conductor there [K]. Within a stretch it only rises or only falls. */
  readonly times: readonly number[]
  readonly temperatures: readonly number[]
}

/** Above this nothing is followed: copper is near melting and the jacket gone. */
const MOLTEN = 1273.15
const STEP = 0.5
/** Heat [W/m] a cable loses over the temperature [K] of its conductor, made from the jacket's temperature, for then nothing is solved by trial. */
function lossCurve(cable: CableInAir, ambient: number, start: number): Curve {
  const from = Math.min(ambient, start) - 1,
    x: number[] = [],
    y: number[] = []
  for (let i = 0; (x.at(-1) ?? 0) < MOLTEN; i++) {
    const { heat, conductor } = heatAtSurface(cable, from + i * STEP, ambient)
    x.push(conductor)
    y.push(heat)
  }
  return curve(x, y)
}
/** Makes the stretch of a load that starts at one temperature [K] end at another; undefined where it passes 1000 °C. */
function follower(cable: WarmingCable, ambient: number, coldest: number): (from: number, stretch: Stretch) => number | undefined {
  const loss = lossCurve(cable, ambient, coldest)
  return (from, { current, time }) => {
    if (time === 0) return from
    const run = solveOde(
      (_, [conductor], rate) => {
        const made = conductorHeat({ ...cable, current, conductor: conductor as number })
        rate[0] = (made - at(loss, conductor as number)) / cable.heatCapacity
      },
      0,
      [from],
      time,
      { relative: 1e-8, absolute: 1e-5, watch: [{ of: (_, y) => MOLTEN - (y[0] as number), stop: true }] },
    )
    return run === undefined || run.stoppedBy !== undefined ? undefined : (run.states.at(-1)?.[0] as number)
  }
}

/**
 * Temperature of a cable's conductor [K] through a load, from a start [K], in still air [K]: one body that loses heat as it would at rest,
 * C′·dT/dt = q_made − q_lost. Undefined where the conductor passes 1000 °C.
 *
 * Leaves out that the jacket lags behind: short bursts heat the conductor more, see the short-circuit withstand.
 * Throws RangeError when a stretch lasts less than nothing. Source: heat balance of one body; losses as in `cable-heat`.
 * Example: 35 mm², 200 A from 40 °C in 40 °C → 75.8 °C after 600 s.
 */
export function warming(cable: WarmingCable, load: readonly Stretch[], start: number, ambient: number): Warming | undefined {
  checkLoad(load)
  const follow = follower(cable, ambient, start),
    times = [0],
    temperatures = [start]
  for (const stretch of load) {
    const end = follow(temperatures.at(-1) as number, stretch)
    if (end === undefined) return undefined
    times.push((times.at(-1) as number) + stretch.time)
    temperatures.push(end)
  }
  return { times, temperatures }
}

/**
 * A load repeated until each round is like the last: the conductor [K] at the ends of its stretches, its start last and first alike. Undefined where
 * it would pass 1000 °C.
 *
 * The start that comes back is found by root finding, not by running rounds: the end of a round rises with its start by less than one to one.
 * Throws RangeError when a stretch lasts less than nothing or all together last no time. Example: 400 A 10 s, 150 A 50 s, 35 mm² in 40 °C → 97.5 to 100.7 °C.
 */
export function repeatedLoad(cable: WarmingCable, load: readonly Stretch[], ambient: number): Warming | undefined {
  checkLoad(load)
  if (!(load.reduce((sum, { time }) => sum + time, 0) > 0)) throw new RangeError('repeatedLoad: the load lasts no time')
  const follow = follower(cable, ambient, ambient)
  const round = (start: number): readonly number[] | undefined => {
    const out = [start]
    for (const stretch of load) {
      const end = follow(out.at(-1) as number, stretch)
      if (end === undefined) return undefined
      out.push(end)
    }
    return out
  }
  // A round that passes the end of the scale counts as ending there: above every start.
  const start = root(from => (round(from)?.at(-1) ?? MOLTEN + 1) - from, ambient, MOLTEN, 1e-6)
  const temperatures = start === undefined ? undefined : round(start)
  if (!temperatures) return undefined
  const times = [0]
  for (const { time } of load) times.push((times.at(-1) as number) + time)
  return { times, temperatures }
}
/** The hottest of a warming [K]: it lies at the end of a stretch. */
export const hottest = ({ temperatures }: Warming): number => Math.max(...temperatures)

function checkLoad(load: readonly Stretch[]): void {
  const bad = load.find(({ time }) => !(time >= 0))
  if (bad) throw new RangeError(`warming: a stretch must last zero seconds or more, found ${bad.time}`)
}
