import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { cycleTrace, drawn, roadster, twoUnits } from '../../../../tests/trip-plans.ts'
import { curve } from '../numerics/index.ts'
import { highestRms } from '../numerics/rms.ts'
import type { TripPlan, TripTotals } from './plan.ts'
import { simulate, simulateTotals } from './simulate.ts'
import { highestByWindow } from './windows.ts'

const steady = (speed: number, time = 600): ReturnType<typeof curve> => curve([0, time], [speed, speed])
const parts = ({ energy: { fromCharge: _, ...rest } }: TripTotals): number => Object.values(rest).reduce((sum, e) => sum + e, 0)
const on = (plan: TripPlan, change: Partial<TripPlan>): TripPlan => ({ ...plan, ...change })

describe('energy', () => {
  const seed = Number(process.env['AMPWRIGHT_SEED'] ?? Math.floor(Math.random() * 1e9))
  it(`adds up to what left the charge within 1e-9, for drawn cars, hills, winds and temperatures (AMPWRIGHT_SEED=${seed})`, () => {
    for (let i = 0; i < runs(400); i++) {
      const t = simulateTotals({ ...drawn(seed + i, cycleTrace(i % 2 ? 'us06' : 'wltc-3b')), step: [0.1, 0.5, 1][i % 3]! })
      expect(Math.abs(parts(t) - t.energy.fromCharge), `seed ${seed + i}`).toBeLessThan(1e-9 * t.drawn)
    }
  })
  it('of braking is either recovered at the wheels, lost for a named reason, or never asked back', () => {
    const t = simulateTotals(roadster(cycleTrace('wltc-3b'))),
      { recovered: _, ...lost } = t.regeneration
    // What is not in the list of losses went to the motors: brakes are exactly the losses.
    expect(Object.values(lost).reduce((a, b) => a + b, 0)).toBeCloseTo(t.energy.brakes, 3)
    expect(t.energy.brakes).toBeLessThan(t.wheelBrake)
  })
  it('of a hill is its height times the weight', () => {
    const plan = on(roadster(steady(15)), { slope: curve([0, 1], [0.04, 0.04]) }),
      t = simulateTotals(plan)
    expect(t.energy.slope).toBeCloseTo(plan.road.mass * plan.road.gravity * t.distance * (0.04 / Math.hypot(1, 0.04)), 4)
  })
  it('left in motion is that of the speed at the end', () => {
    const plan = roadster(curve([0, 10], [0, 10])),
      t = simulateTotals(plan)
    expect(t.energy.motion).toBeCloseTo(0.5 * plan.road.effectiveMass * 100, 6)
  })
})

describe('the battery in the loop', () => {
  // One cell's worth, level speed and nothing moving but a constant load: closed forms hold.
  const standing = (power: number, time: number, step: number): TripPlan => {
    const base = roadster(curve([0, time], [0, 0]), step)
    const still = base.units[0]!
    return {
      ...base,
      step,
      units: [{ ...still, losses: { x: Float64Array.of(0, 1), y: Float64Array.of(0, 1), z: new Float64Array(4) } }],
      cabinPower: power,
      otherPower: 0,
      startCharge: 0.5,
      pack: {
        ...base.pack,
        openCircuit: curve([0, 1], [3.6635, 3.6635]),
        resistance: curve([0, 1], [0.0373, 0.0373]),
        resistanceFactor: 1,
        coldFactor: curve([200, 400], [1, 1]),
        branchResistance: 1e-15,
        lowestVoltage: 2.5,
        highestVoltage: 4.2,
        peakCurrent: 1000,
        capacity: 1e9,
      },
    }
  }
  it('gives constant power by the smaller current of two: 20 W from 3.6635 V behind 37.3 mΩ (published cell, recomputed)', () => {
    const { traces } = simulate(standing(20, 10, 1))
    expect(traces.currents[5]).toBeCloseTo(5.802, 4)
    expect(traces.voltages[5]).toBeCloseTo(3.44709, 5)
  })
  it('books what it cannot give as not given', () => {
    const t = simulateTotals(standing(200, 10, 1))
    expect(t.energy.cabin).toBeLessThan(200 * 10)
    expect(parts(t)).toBeCloseTo(t.energy.fromCharge, 9)
  })
  it('holds an RC branch exactly at any step: 16.7 mΩ and 25.5 s under 5.8 A for 10 s (recomputed)', () => {
    for (const step of [0.1, 1, 10]) {
      const plan = standing(0, 10, step),
        cell = {
          ...plan.pack,
          resistance: curve([0, 1], [1e-12, 1e-12]),
          openCircuit: curve([0, 1], [1e6, 1e6]),
          lowestVoltage: 0,
          highestVoltage: 2e6,
          branchResistance: 0.0167,
          branchTime: 25.5,
        }
      // A source so stiff that constant power is constant current.
      const { traces } = simulate({ ...plan, pack: cell, cabinPower: 5.8e6 })
      const last = traces.times.length - 2,
        u = 1e6 - traces.voltages[last]!
      expect(u).toBeCloseTo(0.0167 * 5.8 * (1 - Math.exp(-(10 - step) / 25.5)), 8)
    }
  })
  it('warms by its loss: 844 J/K behind 0.84 W/K under 6.3325 W rises by 5.255 K in 20 min (recomputed)', () => {
    const base = standing(0, 1200, 1),
      current = 50
    const plan: TripPlan = {
      ...base,
      cabinPower: current * (3.6635 - current * 0.002533),
      pack: { ...base.pack, resistance: curve([0, 1], [0.002533, 0.002533]) },
      nodes: base.nodes.map((n, i) => (i === 0 ? { ...n, start: 298.15 } : i === 2 ? { capacity: 844, start: 298.15 } : n)),
      links: [{ from: 2, to: 0, conductance: 0.84 }, ...base.links.slice(1)],
    }
    expect(simulate(plan).totals.hottest[2]! - 298.15).toBeCloseTo(5.255, 3)
  })
})

describe('what the car cannot do', () => {
  it('is reported: a weak motor on a steep hill loses way and time', () => {
    const plan = roadster(steady(30)),
      weak = { ...plan, slope: curve([0, 1], [0.15, 0.15]), units: [{ ...plan.units[0]!, peakPower: 30e3 }] },
      t = simulateTotals(weak)
    expect(t.asked - t.distance).toBeGreaterThan(1000)
    expect(t.slowTime).toBeGreaterThan(500)
  })
  it('never takes more from the battery than its limits allow', () => {
    const plan = on(roadster(cycleTrace('us06')), {}),
      { traces, totals } = simulate({ ...plan, pack: { ...plan.pack, peakCurrent: 100 } })
    expect(totals.peakCurrent).toBeLessThan(100.5)
    expect(Math.min(...traces.voltages)).toBeGreaterThan(plan.pack.lowestVoltage - 1)
  })
  it('stops on a hill it cannot climb and stays there', () => {
    const plan = roadster(steady(10, 60)),
      { traces } = simulate({
        ...plan,
        slope: curve([0, 20, 40, 1000], [0, 0, 0.9, 0.9]),
        units: [{ ...plan.units[0]!, peakTorque: 60, continuousTorque: 50 }],
      })
    expect(traces.speeds.at(-1)).toBe(0)
    expect(traces.distances.every((d, i) => i === 0 || d >= traces.distances[i - 1]!)).toBe(true)
  })
  it('slips on ice: pull stays under the grip of the axle with the load the pull moves', () => {
    const plan = roadster(curve([0, 5, 20], [0, 20, 20])),
      icy = { ...plan, grip: { ...plan.grip, grip: 0.1 } },
      { traces } = simulate(icy),
      { frontMass, rearMass, height, wheelbase } = icy.grip
    const most = (0.1 * icy.road.gravity * rearMass) / (1 - (0.1 * height) / wheelbase)
    expect(Math.max(...traces.forces)).toBeLessThan(most * (1 + 1e-9))
    expect(frontMass).toBeGreaterThan(0)
  })
  it('a winding at its limit leaves the continuous torque', () => {
    const plan = roadster(steady(14, 1800)),
      hot = {
        ...plan,
        slope: curve([0, 1], [0.3, 0.3]),
        links: plan.links.map(l => (l.from === 3 && l.to === 1 ? { ...l, conductance: 40 } : l)),
      },
      { totals, traces } = simulate(hot),
      unit = plan.units[0]!
    expect(totals.hottest[unit.windingNode]!).toBeLessThan(unit.windingLimit + 1)
    expect(totals.hottest[unit.windingNode]!).toBeGreaterThan(unit.windingLimit - 15)
    expect(traces.forces.at(-2)! * plan.road.radius).toBeLessThan(unit.peakTorque * unit.ratio * unit.efficiency)
  })
})

describe('recovery', () => {
  const stop = curve([0, 10, 20], [25, 25, 0])
  it('is nothing with a full or a cold battery', () => {
    const plan = roadster(stop),
      full = simulateTotals({ ...plan, startCharge: 1, cabinPower: 0, otherPower: 0 }),
      cold = simulateTotals({
        ...plan,
        cabinPower: 0,
        otherPower: 0,
        nodes: plan.nodes.map((n, i) => (i === 2 ? { ...n, start: 270 } : n)),
      })
    for (const t of [full, cold]) {
      // The ten seconds before made a little room in the full one.
      expect(t.putBack).toBeLessThan((t === full ? 0.02 : 1e-9) * t.wheelBrake)
      expect(t.regeneration.battery).toBeGreaterThan(0.5 * t.wheelBrake)
    }
  })
  it('on the rear axle is bounded by what braking leaves of its load: a wet road loses more of it than a dry one', () => {
    const plan = {
      ...roadster(stop),
      regeneration: { torqueShare: 1, power: 1e6, cutOffSpeed: 0 },
      startCharge: 0.5,
      nodes: roadster(stop).nodes.map((n, i) => (i === 2 ? { ...n, start: 298 } : n)),
    }
    const lost = (grip: number): number => simulateTotals({ ...plan, grip: { ...plan.grip, grip } }).regeneration.grip
    expect(lost(0.15)).toBeGreaterThan(lost(0.3))
    expect(lost(0.8)).toBe(0)
  })
  it('fades out above the cut-off speed', () => {
    const plan = roadster(stop),
      slow = simulateTotals({ ...plan, regeneration: { ...plan.regeneration, cutOffSpeed: 0 } }),
      fast = simulateTotals({ ...plan, regeneration: { ...plan.regeneration, cutOffSpeed: 8 } })
    expect(slow.regeneration.cutOff).toBe(0)
    expect(fast.regeneration.cutOff).toBeGreaterThan(0)
    expect(fast.putBack).toBeLessThan(slow.putBack)
  })
})

describe('properties', () => {
  it('more mass never takes less on a level road at a steady speed', () => {
    const takes = (mass: number, speed: number): number => {
      const plan = roadster(steady(speed))
      return simulateTotals({ ...plan, road: { ...plan.road, mass, effectiveMass: mass * 1.05, f0: mass * 9.81 * 0.012 } }).net
    }
    for (const speed of [8, 15, 25, 35])
      for (let mass = 800; mass < 2600; mass += 200) expect(takes(mass + 200, speed)).toBeGreaterThanOrEqual(takes(mass, speed))
  })
  it('a head wind takes more, a tail wind less', () => {
    const plan = roadster(steady(25)),
      takes = (headWind: number): number => simulateTotals({ ...plan, road: { ...plan.road, headWind } }).net
    expect(takes(5)).toBeGreaterThan(takes(0))
    expect(takes(-5)).toBeLessThan(takes(0))
  })
  it('a dragged motor takes more than an uncoupled one', () => {
    const plan = twoUnits(roadster(steady(25)), 1),
      free = { ...plan, units: [plan.units[0]!, { ...plan.units[1]!, drag: curve([0, 1], [0, 0]) }] }
    expect(simulateTotals(plan).energy.idle).toBeGreaterThan(0)
    expect(simulateTotals(plan).net).toBeGreaterThan(simulateTotals(free).net)
  })
  it('nears its limit in the step by first order: halving the step halves what is left', () => {
    const net = (step: number): number => simulateTotals(roadster(cycleTrace('wltc-3b'), step)).energy.battery
    const a = net(1),
      b = net(0.5),
      c = net(0.25),
      d = net(0.125)
    const order = Math.log2((a - b) / (b - c)),
      finer = Math.log2((b - c) / (c - d))
    expect(finer).toBeGreaterThan(0.8)
    expect(finer).toBeLessThan(1.3)
    expect(order).toBeGreaterThan(0.7)
  })
  it('takes within 0.5 % at 1 Hz what it takes at 10 Hz', () => {
    for (const id of ['wltc-3b', 'us06', 'udds'] as const) {
      const fine = simulateTotals(roadster(cycleTrace(id), 0.1)).net,
        coarse = simulateTotals(roadster(cycleTrace(id), 1)).net
      expect(Math.abs(coarse / fine - 1), id).toBeLessThan(0.005)
    }
  })
})

it('the highest rms over a window is that of the plain method', () => {
  const { traces } = simulate(roadster(cycleTrace('us06'))),
    n = traces.times.length - 1
  const quick = highestByWindow(traces.currents, n, 0.1, [1, 10, 30, 60])
  for (const [i, window] of [1, 10, 30, 60].entries()) expect(quick[i]).toBeCloseTo(highestRms(traces.times, traces.currents, window)!, 6)
})
it('says so when a plan has no unit, three units, or a node without a neighbour', () => {
  const plan = roadster(steady(10))
  expect(() => simulate({ ...plan, units: [] })).toThrow(/one or two drive units, found 0/)
  expect(() => simulate({ ...plan, links: plan.links.slice(1) })).toThrow(/thermal node 2 has no conductance/)
})
