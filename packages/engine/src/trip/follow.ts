import { lineAt, SURFACE_FROM } from './lines.ts'
import { shareWithin } from './share-within.ts'
import { DERATE_BAND, EXTREME, type Numbers, type SCALARS, SUM, type TripState, type TripTables } from './tables.ts'

/** Below the trace by more than this counts as slow: tolerance of the WLTP driving trace, 2 km/h (UN GTR No. 15, from memory). */
export const SLOW = 2 / 3.6
/** Recovery fades in between the cut-off speed and this many times it. */
export const FADE = 1.5
/** How often a step that asks too much is taken again, each time from the middle speed found last. */
const PASSES = 4
/** Of the current at the battery's greatest possible power; nearer to it the current has no answer. */
const NEARLY = 0.95

/** Where the loop writes its series, one value a step; `at` is the place of the first. */
export type Recorder = {
  at: number
  readonly speeds: Float64Array
  readonly distances: Float64Array
  readonly powers: Float64Array
  readonly currents: Float64Array
  readonly voltages: Float64Array
  readonly charges: Float64Array
  readonly forces: Float64Array
  readonly temperatures: readonly Float64Array[]
}

/** Adds a stretch to the sums. Outside the loop's function: a closure of its own there would be a new one at each call, and the compiler would give up. */
function book(sums: Float64Array, time: number, distance: number, motion: number, perStep: Float64Array, step: number): void {
  sums[SUM.time] = sums[SUM.time]! + time
  sums[SUM.distance] = sums[SUM.distance]! + distance
  sums[SUM.motion] = sums[SUM.motion]! + motion
  for (let i = 0; i < perStep.length; i++) sums[SUM.asked + i] = sums[SUM.asked + i]! + perStep[i]! * step
}

/**
 * Drives steps `from` to `to` of the trace: takes the state on, adds to its sums, records if asked. The equations stand in the README beside.
 *
 * One long function on purpose: split up, its numbers would be boxed on their way between the parts, at twice the time.
 */
export function follow(tables: TripTables, state: TripState, from: number, to: number, record: Recorder | undefined): void {
  // Imports by local names: a test runner would look them up at every call otherwise.
  const band = DERATE_BAND,
    valueAt = lineAt,
    within = shareWithin
  // biome-ignore format: in the order they are made
  const [
    step, mass, effectiveMass, f0, f1, f2, headWind, gravity, level, topSpeed, grip, frontMass, rearMass, lever, share, torqueShare, recoveryPower, cutOffSpeed,
    branchResistance, branchKept, capacity, lowestVoltage, highestVoltage, peakCurrent, chargeCurrent, packNode, cabinPower, otherPower,
  ] = tables.scalars as unknown as Numbers<typeof SCALARS>
  const { wanted, turn, pulling, braking, perPulling, perBraking, gearDrag, gearDragRise, axle, part } = tables
  const { peakTorque, peakPower, continuousTorque, continuousPower, cornerPerVolt, inverterShare, throttledFrom } = tables
  const { windingNode, inverterNode, loss, drag, openCircuit, resistance, cold, chargeShare, slope } = tables
  const { live, perTotal, kept, near, nearTo, nearBy } = tables
  const aux = cabinPower + otherPower,
    perStep = 1 / step,
    chargeStep = step / capacity,
    packAt = packNode | 0
  const n = turn.length,
    nodes = state.temperatures.length
  // Grip of the one driven axle per unit of weight: the pull itself moves load off the front and onto the rear.
  const both = grip * (frontMass + rearMass),
    onRear = grip * lever < 1 ? (grip * rearMass) / (1 - grip * lever) : both
  const alone = axle[0] === 0 ? (grip * frontMass) / (1 + grip * lever) : axle[0] === 1 && onRear < both ? onRear : both
  const { temperatures, hottest, sums, extremes } = state
  const old = temperatures.slice(),
    heat = new Float64Array(nodes),
    speeds = new Float64Array(n),
    torques = new Float64Array(n),
    forces = new Float64Array(n),
    caps = new Float64Array(n)

  let [v0, s, z, u, terminal] = state.values as unknown as Numbers<5>
  // biome-ignore format: what belongs together on a line
  let asked = 0, slowTime = 0, eCharge = 0, eBattery = 0, eCabin = 0, eOther = 0, eMotors = 0, eLine = 0, eIdle = 0,
    eRolling = 0, eAir = 0, eSlope = 0, eBrakes = 0
  // biome-ignore format: what belongs together on a line
  let drawn = 0, putBack = 0, wheelDrive = 0, wheelBrake = 0, recovered = 0, lostCutOff = 0, lostTorque = 0, lostGrip = 0,
    lostPower = 0, lostFull = 0, aboveTime = 0
  let mostCurrent = extremes[EXTREME.current]!,
    mostCharge = extremes[EXTREME.chargeCurrent]!,
    leastVoltage = extremes[EXTREME.voltage]!
  const vBegan = v0,
    sBegan = s

  for (let k = from; k < to; k++) {
    // What the battery can give and take in this step.
    const open = valueAt(openCircuit, z),
      warmth = temperatures[packAt]!,
      colder = valueAt(cold, warmth)
    const r0 = valueAt(resistance, z) * colder,
      r1 = branchResistance * colder,
      inner = open - u,
      perR0 = 1 / r0
    let most = (inner - lowestVoltage) * perR0
    if (most > peakCurrent) most = peakCurrent
    if (most > NEARLY * 0.5 * inner * perR0) most = NEARLY * 0.5 * inner * perR0
    const mostPower = most > 0 ? most * (inner - r0 * most) : 0
    const aim = wanted[k + 1]!,
      want = aim < topSpeed ? aim : topSpeed
    let v1 = want,
      vm = 0.5 * (v0 + v1),
      rate = (v1 - v0) * perStep,
      pass = 0,
      settled = false
    let force = 0,
      got = 0,
      brake = 0,
      rolling = 0,
      air = 0,
      climb = 0,
      idle = 0,
      shaft = 0,
      lost = 0,
      above = false
    let cutOff = 0,
      byTorque = 0,
      byGrip = 0,
      byPower = 0,
      byBattery = 0
    for (;;) {
      // Road.
      let cos = 1
      rolling = air = climb = idle = 0
      if (vm > 0) {
        if (level === 0) {
          const p = valueAt(slope, s + 0.5 * vm * step)
          cos = 1 / Math.sqrt(1 + p * p)
          climb = mass * gravity * p * cos
        }
        const w = vm + headWind
        rolling = f0 * cos + f1 * vm
        air = f2 * w * Math.abs(w)
      }
      for (let i = 0; i < n; i++) {
        const speed = turn[i]! * vm
        speeds[i] = speed
        if (vm > 0) idle += (gearDrag[i]! + gearDragRise[i]! * speed) * turn[i]!
        if (part[i] === 0 && vm > 0) idle += valueAt(drag[i]!, speed) * braking[i]!
      }
      const resists = rolling + air + climb + idle
      force = vm > 0 ? resists + effectiveMass * rate : 0
      const driving = force > 0,
        size = Math.abs(force)

      // What each unit can do at this speed, voltage and winding temperature, as force at the wheels; pulling, no more than its axle grips. Load
      // moves between the axles with the whole force between tyres and road.
      const weight = gravity * cos,
        all = grip * weight * (frontMass + rearMass),
        shift = (size < all ? size : all) * lever
      brake = driving ? 0 : size
      if (force !== 0 && !(settled && driving)) {
        for (let i = 0; i < n; i++) {
          let torque = peakTorque[i]!,
            power = peakPower[i]!
          const hot = temperatures[windingNode[i]!]! - throttledFrom[i]!
          if (hot > 0) {
            const ct = continuousTorque[i]!,
              cp = continuousPower[i]!,
              room = 1 - hot / band
            torque = room >= 0 ? ct + (torque - ct) * room : room > -1 ? ct * (1 + room) : 0
            power = room >= 0 ? cp + (power - cp) * room : room > -1 ? cp * (1 + room) : 0
          }
          if (!driving && torque > torqueShare * peakTorque[i]!) torque = torqueShare * peakTorque[i]!
          const corner = cornerPerVolt[i]! * terminal
          if (power > corner) power = corner
          if (torque * speeds[i]! > power) torque = power / speeds[i]!
          let cap = torque * (driving ? pulling[i]! : braking[i]!)
          if (driving) {
            const a = axle[i]!
            let hold =
              n === 1 ? alone * weight : a === 0 ? grip * (weight * frontMass - shift) : a === 1 ? grip * (weight * rearMass + shift) : all
            if (hold < 0) hold = 0
            if (cap > hold) cap = hold
          }
          caps[i] = part[i] === 1 ? cap : 0
        }
      }
      let ask = size
      let backPower = 0
      if (!driving && size > 0) {
        let back = (highestVoltage - inner) * perR0
        const takes = chargeCurrent * valueAt(chargeShare, warmth)
        if (back > takes) back = takes
        if (back > 0) backPower = back * (inner + r0 * back)
        let fade = cutOffSpeed > 0 ? (vm - cutOffSpeed) / ((FADE - 1) * cutOffSpeed) : 1
        if (fade < 0) fade = 0
        else if (fade > 1) fade = 1
        ask = brake * fade
      }
      cutOff = brake - ask * (driving ? 0 : 1)
      if (settled && driving) {
        // The split found stays; what the last look at the middle speed changed goes the same way.
        const sum = n === 1 ? 0 : forces[0]! + forces[1]!
        if (n === 1) forces[0] = ask
        else {
          forces[0] = (sum > 0 ? forces[0]! / sum : share) * ask
          forces[1] = ask - forces[0]!
        }
      } else if (n === 1) forces[0] = ask < caps[0]! ? ask : caps[0]!
      else {
        const c0 = caps[0]!,
          c1 = caps[1]!
        let first = share * ask
        if (first > c0) first = c0
        let second = ask - first
        if (second > c1) second = c1
        first = ask - second
        if (first > c0) first = c0
        forces[0] = first
        forces[1] = second
      }
      got = n === 1 ? forces[0]! : forces[0]! + forces[1]!
      byTorque = driving ? 0 : ask - got
      byGrip = byPower = byBattery = 0
      if (brake > 0) {
        for (let i = 0; i < n; i++) {
          const a = axle[i]!
          let hold = a === 0 ? grip * weight * frontMass + grip * shift : a === 1 ? grip * weight * rearMass - grip * shift : all
          if (hold < 0) hold = 0
          if (forces[i]! > hold) {
            byGrip += forces[i]! - hold
            forces[i] = hold
          }
        }
        got -= byGrip
      }

      // Motors and their losses; then what the battery allows of it.
      for (let i = 0; i < n; i++) torques[i] = force === 0 ? 0 : forces[i]! * (driving ? perPulling[i]! : perBraking[i]!)
      for (let turns = 0; turns < 3; turns++) {
        shaft = lost = 0
        above = false
        for (let i = 0; i < n; i++) {
          const torque = torques[i]!,
            speed = speeds[i]!,
            power = torque * speed
          // As `surfaceAt`, here in place: called, its answer would be boxed.
          const map = loss[i]!,
            rows = map[2]! | 0,
            columns = map[5]! | 0
          let x = (speed - map[0]!) * map[1]!,
            y = (torque - map[3]!) * map[4]!
          if (x < 0) x = 0
          else if (x > rows - 1) x = rows - 1
          if (y < 0) y = 0
          else if (y > columns - 1) y = columns - 1
          let row = x | 0,
            column = y | 0
          if (row > rows - 2) row--
          if (column > columns - 2) column--
          x -= row
          y -= column
          const corner = SURFACE_FROM + row * columns + column,
            low = map[corner]! + (map[corner + 1]! - map[corner]!) * y,
            high = map[corner + columns]! + (map[corner + columns + 1]! - map[corner + columns]!) * y,
            waste = low + (high - low) * x,
            still = map[SURFACE_FROM + row * columns]! * (1 - x) + map[SURFACE_FROM + (row + 1) * columns]! * x
          shaft += power
          lost += waste
          heat[inverterNode[i]!] = inverterShare[i]! * waste
          // Only what torque adds arises in the winding.
          heat[windingNode[i]!] = waste > still ? waste - still : 0
          if (torque > continuousTorque[i]! || power > continuousPower[i]!) above = true
        }
        let down = 1
        if (driving) {
          if (!settled && shaft + lost + aux > mostPower && turns === 0) down = within(mostPower - aux, false, speeds, torques, loss)
        } else if (turns === 0 && shaft - lost > recoveryPower) {
          down = within(recoveryPower, true, speeds, torques, loss)
          byPower = got * (1 - down)
        } else if (shaft - lost > (backPower + aux) * (1 + 1e-12)) {
          down = within(backPower + aux, true, speeds, torques, loss)
          byBattery += got * (1 - down)
        }
        if (!(down < 1)) break
        got *= down
        for (let i = 0; i < n; i++) {
          forces[i] = forces[i]! * down
          torques[i] = torques[i]! * down
        }
      }

      if (!driving || settled || (pass === 0 && !(got < force * (1 - 1e-12)))) break
      // It cannot keep up: take the step again from the middle of what it reaches.
      const reached = v0 + ((got - resists) / effectiveMass) * step
      pass++
      if (reached > 0) {
        v1 = reached < want ? reached : want
        vm = 0.5 * (v0 + v1)
        settled = pass === PASSES
        rate = ((settled ? v1 : want) - v0) / step
      } else {
        // It comes to a stand within the step: rolls v0²/(2a), then its brakes hold it.
        const roll = v0 > 0 ? (v0 * v0 * effectiveMass) / (2 * (resists - got)) : 0
        v1 = 0
        vm = roll / step
        settled = true
        rate = roll > 0 ? -(v0 * v0) / (2 * roll) : 0
      }
    }

    // The battery gives the power asked, as far as there is a current for it.
    const driving = force > 0,
      top = 0.25 * inner * inner * perR0
    let power = (driving ? shaft : -shaft) + lost + aux,
      fed = 1
    if (power > top) {
      fed = aux > 0 ? Math.max(0, 1 - (power - top) / aux) : 1
      power = top
    }
    const root = Math.sqrt(Math.max(0, inner * inner - 4 * r0 * power)),
      current = (2 * power) / (inner + root)
    if (record) {
      const at = record.at + k - from
      record.speeds[at] = v0
      record.distances[at] = s
      record.powers[at] = power
      record.currents[at] = current
      record.voltages[at] = inner - r0 * current
      record.charges[at] = z
      record.forces[at] = force
      for (let l = 0; l < live.length; l++) record.temperatures[live[l]!]![at] = temperatures[live[l]!]!
    }
    terminal = inner - r0 * current
    heat[packAt] = r0 * current * current + (u * u) / r1
    eCharge += open * current
    eBattery += (r0 * current + u) * current
    eCabin += cabinPower * fed
    eOther += otherPower * fed
    eMotors += lost
    eLine += driving ? shaft - force * vm : got * vm - shaft
    eRolling += rolling * vm
    eAir += air * vm
    eSlope += climb * vm
    eIdle += idle * vm
    if (driving) wheelDrive += force * vm
    else {
      wheelBrake += brake * vm
      eBrakes += (brake - got) * vm
      if (shaft > lost) recovered += shaft - lost
      lostCutOff += cutOff * vm
      lostTorque += byTorque * vm
      lostGrip += byGrip * vm
      lostPower += byPower * vm
      lostFull += byBattery * vm
    }
    if (power > 0) drawn += power
    else putBack -= power
    if (above) aboveTime++
    if (current > mostCurrent) mostCurrent = current
    if (-current > mostCharge) mostCharge = -current
    if (terminal < leastVoltage) leastVoltage = terminal
    asked += 0.5 * (wanted[k]! + aim)
    if (aim - v1 > SLOW) slowTime++

    z -= current * chargeStep
    u = branchKept * u + (1 - branchKept) * r1 * current
    s += vm * step
    v0 = v1
    for (let l = 0; l < live.length; l++) old[live[l]!] = temperatures[live[l]!]!
    for (let l = 0; l < live.length; l++) {
      const i = live[l]!,
        end = near[l + 1]!
      let flow = heat[i]!
      for (let m = near[l]!; m < end; m++) flow += nearBy[m]! * old[nearTo[m]!]!
      const settles = flow * perTotal[l]!,
        warm = settles + (old[i]! - settles) * kept[l]!
      temperatures[i] = warm
      if (warm > hottest[i]!) hottest[i] = warm
    }
  }

  state.values.set([v0, s, z, u, terminal])
  // biome-ignore format: in the order of SUM
  const perStepSums = Float64Array.of(
    asked, slowTime, eCharge, eBattery, eCabin, eOther, eMotors, eLine, eIdle, eRolling, eAir, eSlope, eBrakes, drawn, putBack,
    wheelDrive, wheelBrake, recovered, lostCutOff, lostTorque, lostGrip, lostPower, lostFull, aboveTime,
  )
  book(sums, (to - from) * step, s - sBegan, 0.5 * effectiveMass * (v0 * v0 - vBegan * vBegan), perStepSums, step)
  extremes[EXTREME.current] = mostCurrent
  extremes[EXTREME.chargeCurrent] = mostCharge
  extremes[EXTREME.voltage] = leastVoltage
}
