import type { Edit } from '@ampwright/conversion'
import { FUEL_DENSITY, isGap, type Model } from '@ampwright/engine'
import type { ConceptKind, Kept } from './layouts.ts'
import { betweenAxles, engineMass, exhaustMass, TANK_WITH_FUEL, tankMass } from './planned.ts'

const NAMES: Readonly<Record<Kept, RegExp>> = {
  gearbox: /gear-?box|transmission/i,
  propshaft: /prop-?shaft/i,
  'transfer case': /transfer/i,
  'axle drive': /axle-?drive|differential|final-?drive/i,
}
const ENGINE = /engine/i
const TANK = /^tank|(fuel|petrol|diesel).*tank/i

/** A tank as it hung in the car when that was weighed: that of the class, less the fuel that was not in it. Nothing while it is not known how full it was. */
function tankThen({ donor: { weighing, engine } }: Model): string | undefined {
  if (isGap(weighing.fuel) || isGap(weighing.tank) || isGap(engine.fuel)) return undefined
  const missing = Math.max(0, weighing.tank.value - weighing.fuel.value) * FUEL_DENSITY[engine.fuel.value].value
  return tankMass(Math.round(Math.max(TANK_WITH_FUEL.value - missing, TANK_WITH_FUEL.half)))
}

const names = (m: Model): readonly string[] => Object.keys(m.donor.removed)
const isKept = (name: string, { keeps }: ConceptKind): boolean => keeps.some(k => NAMES[k].test(name))

/** Something that stays was weighed together with the engine: its own mass is not known, so the concept cannot be weighed. */
export const weighedTogether = (m: Model, kind: ConceptKind): string | undefined =>
  names(m).find(name => ENGINE.test(name) && isKept(name, kind))

/** What the list of parts taken out needs for a concept: what stays is put back, what has a place but no mass yet takes that of its class. */
export function removedEdits(m: Model, kind: ConceptKind): readonly Edit[] {
  return [...listed(m, kind), ...exhaust(m)]
}
const listed = (m: Model, kind: ConceptKind): readonly Edit[] =>
  Object.entries(m.donor.removed).flatMap(([name, item]): readonly Edit[] => {
    if (isKept(name, kind)) return [{ path: ['donor', 'removed', name], now: null }]
    if (!isGap(item.mass) || isGap(item.x)) return []
    const at = ['donor', 'removed', name],
      mass = ENGINE.test(name) ? engineMass() : TANK.test(name) ? tankThen(m) : undefined
    if (mass === undefined) return []
    const fuel = TANK.test(name) && isGap(item.fuel) ? [{ path: [...at, 'fuel'], now: 'still in it' }] : []
    return [{ path: [...at, 'mass'], now: mass }, ...fuel]
  })
const EXHAUST = /exhaust/i
/** It leaves every car, and runs from end to end of it. */
function exhaust(m: Model): readonly Edit[] {
  const { wheelbase } = m.donor
  if (isGap(wheelbase) || names(m).some(name => EXHAUST.test(name))) return []
  return [{ path: 'donor.removed.exhaust', now: { mass: exhaustMass(), x: betweenAxles(Math.round(wheelbase.value * 500)) } }]
}

/** What leaves the car in this concept and is in no list yet: kerb mass is too high by it. */
export function notTakenOff(m: Model, kind: ConceptKind): readonly string[] {
  const named = (pattern: RegExp): boolean => names(m).some(name => pattern.test(name))
  const goes: readonly (readonly [string, boolean, RegExp])[] = [
    ['engine', true, ENGINE],
    ['exhaust', isGap(m.donor.wheelbase), EXHAUST],
    ['fuel tank', true, /tank/i],
    ['gearbox', !kind.keeps.includes('gearbox'), NAMES.gearbox],
    ['propshaft', kind.way === 'two drive units', NAMES.propshaft],
  ]
  return goes.flatMap(([label, leaves, pattern]) => (leaves && !named(pattern) ? [label] : []))
}
