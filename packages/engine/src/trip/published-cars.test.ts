import { describe, expect, it } from 'vitest'
import { proven } from '../../../../tests/proof.ts'
import { PUBLISHED_CARS, type PublishedCar, siMass, siRoad, wallOf } from '../../../../tests/published-cars.ts'
import { roadOnly } from '../../../../tests/road-only.ts'
import { cycleTrace, roadster } from '../../../../tests/trip-plans.ts'
import { CLASS_CELLS } from '../battery/class-cells.ts'
import { classEfficiencyTogether } from '../drive/class-values.ts'
import { classDrag, classLosses } from '../drive/motor-loss.ts'
import { at, curve, grid, integral } from '../numerics/index.ts'
import type { TripPlan } from './plan.ts'
import { simulateTotals } from './simulate.ts'

const SOURCE = 'US EPA, model year 2022 certification tables'

describe('road load of published cars', () => {
  it.each(PUBLISHED_CARS.map(car => [car.name, car] as const))(
    '%s: power at 50 mph and at four speeds within 0.2 % or the last digit printed',
    (name, car) => {
      const { f0, f1, f2 } = siRoad(car),
        power = (v: number): number => (f0 + f1 * v + f2 * v * v) * v
      const horse = power(50 * 0.44704) / 745.69987158227
      expect(
        proven({
          domain: 'trips',
          check: `${name}: road-load power at 50 mph`,
          source: SOURCE,
          mark: 'published',
          expected: car.hp[1],
          obtained: horse,
          tolerance: Math.max(0.002 * car.hp[1], 0.006),
          unit: 'hp',
        }),
      ).toBe(true)
      for (const [i, kmh] of [50, 80, 100, 120].entries())
        expect(Math.abs(power(kmh / 3.6) / 1e3 - car.road[i]!)).toBeLessThanOrEqual(Math.max(0.002 * car.road[i]!, 0.0055))
    },
  )
  it.each(PUBLISHED_CARS.map(car => [car.name, car] as const))('%s: wheel energies within 0.3 % or 0.1 Wh/km', (name, car) => {
    for (const id of ['udds', 'hwfet'] as const)
      for (const [k, turning] of [1, 1.015].entries()) {
        const base = roadOnly(cycleTrace(id), { mass: siMass(car), ...siRoad(car) }),
          t = simulateTotals({ ...base, road: { ...base.road, effectiveMass: siMass(car) * turning } })
        for (const [i, joules] of [t.wheelDrive, t.wheelBrake].entries()) {
          const expected = car.wheel[id][2 * k + i]!,
            obtained = joules / 3.6 / t.distance
          const holds = proven({
            domain: 'trips',
            check: `${name}: wheel energy ${i ? 'braking' : 'driving'}, ${id}${k ? ', 1.5 % turning' : ''}`,
            source: 'recomputed by two programs from published coefficients',
            mark: 'independent program',
            expected,
            obtained,
            tolerance: Math.max(0.003 * expected, 0.1),
            unit: 'Wh/km',
          })
          expect(holds, `${id}: expected ${expected}, found ${obtained}`).toBe(true)
        }
      }
  })
})

/**
 * One fixed set of class values for every car; nothing is chosen per car beyond what is published (mass, coast-down, motor power and kind, driven axles, battery size).
 * The coast-down was driven in neutral: it holds the drag of gears and of motors without current, so that part of the motor loss is left out here.
 */
const CLASS = {
  driveline: 0.96,
  baseSpeed: 420,
  topSpeed: 1250,
  ratio: 9,
  radius: 0.32,
  otherPower: 200,
  wall: 0.88,
  series: 96,
  wiring: 0.01,
} as const
function plan(car: PublishedCar, id: 'udds' | 'hwfet'): TripPlan {
  const base = roadster(cycleTrace(id)),
    mass = siMass(car),
    cell = CLASS_CELLS.NMC,
    open = cell.openCircuit.value
  const volts = CLASS.series * integral(open, 0, 1),
    charge = (car.battery * 3.6e6) / volts,
    resistance = (CLASS.series * cell.dropAtHourRate.value * 3600) / charge,
    both = car.motors.length === 2
  const units = car.motors.map((power, i) => {
    const torque = power / CLASS.baseSpeed,
      shape = [car.kind, classEfficiencyTogether(car.kind).value, torque, CLASS.baseSpeed, CLASS.topSpeed] as const,
      map = classLosses(...shape),
      spinning = classDrag(...shape)
    const losses = grid(
      map.x,
      map.y,
      map.z.map((v, k) => Math.max(0, v - at(spinning, map.x[Math.floor(k / map.y.length)]!) * map.x[Math.floor(k / map.y.length)]!)),
    )
    return {
      ...base.units[0]!,
      axle: car.axles[i]!,
      ratio: CLASS.ratio,
      efficiency: CLASS.driveline,
      gearDrag: 0,
      gearDragRise: 0,
      peakTorque: torque,
      peakPower: power,
      continuousTorque: torque / 2,
      continuousPower: power / 2,
      baseSpeed: CLASS.baseSpeed,
      topSpeed: CLASS.topSpeed,
      losses,
      lossFactor: 1,
      drag: curve([0, 1], [0, 0]),
      windingLimit: 1000,
      windingNode: 3 + 2 * i,
      inverterNode: 4 + 2 * i,
    }
  })
  return {
    ...base,
    units,
    frontShare: both ? 0.5 : 1,
    road: { ...base.road, mass, effectiveMass: 1.015 * mass, headWind: 0, radius: CLASS.radius, ...siRoad(car) },
    grip: { ...base.grip, grip: 0.8, frontMass: mass / 2, rearMass: mass / 2, height: 0.55, wheelbase: 2.7 },
    regeneration: { torqueShare: 1, power: 80e3, cutOffSpeed: 5 / 3.6 },
    pack: {
      ...base.pack,
      openCircuit: curve(
        open.x,
        open.y.map(u => u * CLASS.series),
      ),
      resistance: curve(
        [0, 1],
        [1, 1].map(() => resistance * (1 - cell.branchShare.value) + CLASS.wiring),
      ),
      resistanceFactor: 1,
      branchResistance: resistance * cell.branchShare.value,
      branchTime: cell.branchTime.value,
      capacity: charge,
      lowestVoltage: 288,
      highestVoltage: 403,
      peakCurrent: 1000,
      chargeCurrent: charge / 3600,
      chargeShare: curve([200, 400], [1, 1]),
    },
    cabinPower: 0,
    otherPower: CLASS.otherPower,
    startCharge: 0.8,
    nodes: [...base.nodes.map((n, i) => (i === 0 || i === 2 ? { ...n, start: 296.15 } : n)), ...base.nodes.slice(3, both ? 5 : 3)],
    links: [
      ...base.links,
      ...(both
        ? [
            { from: 5, to: 1, conductance: 60 },
            { from: 6, to: 1, conductance: 90 },
          ]
        : []),
    ],
  }
}

describe('wall consumption of published cars, predicted from published inputs by one fixed set of class values', () => {
  const rows = PUBLISHED_CARS.flatMap(car =>
    (['udds', 'hwfet'] as const).map(id => {
      const t = simulateTotals(plan(car, id)),
        expected = wallOf(car.mpge[id]),
        obtained = t.net / CLASS.wall / 3.6 / t.distance
      return { car, id, expected, obtained, off: obtained / expected - 1 }
    }),
  )
  const counted = rows.filter(r => !r.car.outlier)
  // What lies outside, and why nothing was bent to bring it in.
  const KNOWN: Readonly<Record<string, string>> = {
    'BEV-06 compact crossover, rear drive, hwfet':
      'the set of class values is 7 % low on the mean of all cars; here it adds to a car above its own class',
    'BEV-08 compact crossover, two motors, udds':
      'two permanent-magnet motors that are never uncoupled: thirstier in town than their road load says',
    'BEV-09 large crossover, two induction motors, hwfet': 'an outlier among its class, no plain model meets it',
  }
  const remarkOf = (r: (typeof rows)[number]): string | undefined => KNOWN[`${r.car.name}, ${r.id}`] ?? r.car.outlier
  it('lies within 12 % on each cycle, but for what is named', () => {
    const misses = rows.filter(
      r =>
        !proven({
          domain: 'trips',
          check: `${r.car.name}: consumption at the wall, ${r.id}`,
          source: SOURCE,
          mark: 'published',
          expected: r.expected,
          obtained: r.obtained,
          tolerance: 0.12 * r.expected,
          unit: 'Wh/km',
          ...(remarkOf(r) ? { remark: remarkOf(r) as string } : {}),
        }),
    )
    expect(misses.map(r => `${r.car.name}, ${r.id}`)).toEqual(Object.keys(KNOWN))
    for (const r of misses) expect(Math.abs(r.off)).toBeLessThan(0.2)
  })
  it('lies within 8 % on the mean of all cars', () => {
    const mean = counted.reduce((sum, r) => sum + r.off, 0) / counted.length
    expect(
      proven({
        domain: 'trips',
        check: 'consumption at the wall, mean of eight cars on two cycles: predicted over published',
        source: SOURCE,
        mark: 'published',
        expected: 1,
        obtained: 1 + mean,
        tolerance: 0.08,
      }),
    ).toBe(true)
  })
  it('says of at least seven in eight cars on which cycle they take more', () => {
    const right = PUBLISHED_CARS.filter(c => !c.outlier).filter(car => {
      const [udds, hwfet] = rows.filter(r => r.car === car) as [(typeof rows)[number], (typeof rows)[number]]
      return Math.sign(udds.obtained - hwfet.obtained) === Math.sign(udds.expected - hwfet.expected)
    })
    expect(right.length).toBeGreaterThanOrEqual(7)
  })
})
