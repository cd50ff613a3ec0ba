import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { TripPlan, TripTotals } from '../packages/engine/src/trip/plan.ts'
import { WINDOWS } from '../packages/engine/src/trip/windows.ts'

/** A plan as the C program reads it: `name count numbers…`, doubles in full. */
export function planText(p: TripPlan): string {
  const lines: string[] = []
  const put = (name: string, values: ArrayLike<number>): void =>
    void lines.push(`${name} ${values.length} ${Array.from(values, v => (v === Infinity ? 'inf' : String(v))).join(' ')}`)
  const { road, grip, units, regeneration, pack } = p
  for (const [name, c] of Object.entries({
    trace: p.trace,
    slope: p.slope,
    openCircuit: pack.openCircuit,
    resistance: pack.resistance,
    coldFactor: pack.coldFactor,
    chargeShare: pack.chargeShare,
  })) {
    put(`${name}.x`, c.x)
    put(`${name}.y`, c.y)
  }
  for (const [name, v] of Object.entries({
    ...road,
    ...grip,
    frontShare: p.frontShare,
    torqueShare: regeneration.torqueShare,
    recoveryPower: regeneration.power,
    cutOffSpeed: regeneration.cutOffSpeed,
    step: p.step,
    cabinPower: p.cabinPower,
    otherPower: p.otherPower,
    startCharge: p.startCharge,
    packNode: pack.node,
  }))
    put(name, [v])
  for (const name of [
    'resistanceFactor',
    'branchResistance',
    'branchTime',
    'capacity',
    'lowestVoltage',
    'highestVoltage',
    'peakCurrent',
    'chargeCurrent',
  ] as const)
    put(name, [pack[name]])
  put(
    'axle',
    units.map(u => ['front', 'rear', 'both'].indexOf(u.axle)),
  )
  for (const name of [
    'ratio',
    'efficiency',
    'gearDrag',
    'gearDragRise',
    'peakTorque',
    'peakPower',
    'continuousTorque',
    'continuousPower',
    'baseSpeed',
    'statedVoltage',
    'topSpeed',
    'lossFactor',
    'inverterShare',
    'windingLimit',
    'windingNode',
    'inverterNode',
  ] as const)
    put(
      name,
      units.map(u => u[name]),
    )
  for (const [i, u] of units.entries()) {
    put(`losses${i}.x`, u.losses.x)
    put(`losses${i}.y`, u.losses.y)
    put(`losses${i}.z`, u.losses.z)
    put(`drag${i}.x`, u.drag.x)
    put(`drag${i}.y`, u.drag.y)
  }
  put(
    'nodeCapacity',
    p.nodes.map(n => n.capacity),
  )
  put(
    'nodeStart',
    p.nodes.map(n => n.start),
  )
  put(
    'linkFrom',
    p.links.map(l => l.from),
  )
  put(
    'linkTo',
    p.links.map(l => l.to),
  )
  put(
    'linkConductance',
    p.links.map(l => l.conductance),
  )
  return `${lines.join('\n')}\n`
}

/** The engine's results under the names the C program prints. */
export function namedTotals(t: TripTotals, rms: Float64Array): Record<string, number> {
  const { fromCharge, ...energy } = t.energy,
    { battery: full, ...regeneration } = t.regeneration
  return {
    asked: t.asked,
    slowTime: t.slowTime,
    charge: fromCharge,
    ...energy,
    drawn: t.drawn,
    putBack: t.putBack,
    wheelDrive: t.wheelDrive,
    wheelBrake: t.wheelBrake,
    ...regeneration,
    full,
    aboveContinuous: t.aboveContinuous,
    distance: t.distance,
    endCharge: t.endCharge,
    peakCurrent: t.peakCurrent,
    peakChargeCurrent: t.peakChargeCurrent,
    lowestVoltage: t.lowestVoltage,
    ...Object.fromEntries(Array.from(t.hottest, (v, i) => [`hottest${i}`, v])),
    ...Object.fromEntries(WINDOWS.map((w, i) => [`rms${w}`, rms[i]!])),
  }
}

export const hasCompiler = (): boolean => spawnSync('gcc', ['--version']).status === 0

export type Twin = { readonly run: (plan: TripPlan, runs?: number) => Record<string, number>; readonly close: () => void }

/** Compiles the C twin into a folder of its own. Throws with the compiler's words when it will not compile. */
export function twin(): Twin {
  const folder = mkdtempSync(join(tmpdir(), 'trip-twin-')),
    program = join(folder, 'trip')
  const made = spawnSync(
    'gcc',
    ['-O3', '-ffp-contract=off', '-Wall', '-Werror', '-o', program, join(import.meta.dirname, 'trip.c'), '-lm'],
    { encoding: 'utf8' },
  )
  if (made.status !== 0) throw new Error(`trip.c does not compile: ${made.stderr}`)
  return {
    run(plan, runs = 1) {
      const file = join(folder, 'plan.txt')
      writeFileSync(file, planText(plan))
      const ran = spawnSync(program, [file, String(runs)], { encoding: 'utf8' })
      if (ran.status !== 0) throw new Error(`the C trip ended with ${ran.status}: ${ran.stderr}`)
      return Object.fromEntries(
        ran.stdout
          .trim()
          .split('\n')
          .map(line => line.split(' '))
          .map(([name, value]) => [name, Number(value)]),
      )
    },
    close: () => rmSync(folder, { recursive: true, force: true }),
  }
}
