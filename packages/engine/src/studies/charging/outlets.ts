import { chargerLoss, chargerTakes, efficiencyOfLoss } from '../../charging/charger-loss.ts'
import {
  CIRCUIT_SHARE,
  chargerDraw,
  continuousOutletCurrent,
  lesserCurrent,
  NO_LOSS,
  outletLimit,
  outletPower,
  phasesUsed,
  phaseVoltage,
} from '../../charging/outlet.ts'
import { powerToPack } from '../../charging/power-to-pack.ts'
import { currentRoom, powerRoom } from '../../charging/room.ts'
import type { ChargingPlace } from '../../model/charging.ts'
import type { Model } from '../../model/model.ts'
import { type Fact, type Figure, isGap, standard, type Value } from '../../working/value.ts'
import { packModel } from '../pack/pack-model.ts'
import { type Ask, from, type Gaps, isGaps, type Known, type Maker, maybe, study } from '../study.ts'
import { type ChargerLosses, chargerLosses } from './charger-losses.ts'

/** What one place puts into the pack. */
export type Supply = {
  readonly kind: 'AC' | 'DC'
  readonly power: Value
  readonly current: Value
  readonly voltage: Value
  /** At the wall, for hours; null at a post. */
  readonly outlet: { readonly current: Value; readonly power: Value; readonly draw: Value } | null
  /** The loss law of the charger in the car; null at a post. */
  readonly losses: ChargerLosses['parts'] | null
}
/** Countries whose code lets four fifths of a circuit be drawn for hours. */
const FOUR_FIFTHS: readonly string[] = ['us', 'ca', 'ca-qc']

const shareFor = ({ brief: { rules } }: Model): Fact =>
  !isGap(rules) && FOUR_FIFTHS.includes(rules.value) ? CIRCUIT_SHARE.eighty : CIRCUIT_SHARE.whole

/** Phases of the inlet where it says so: one of a single phase lets a charger of three have no more. */
const inletPhases = (m: Model): Fact | null => (isGap(m.charging.inlet.phases) ? null : m.charging.inlet.phases)
function phasesOf(
  make: Maker,
  { outlet, charger, through }: { readonly outlet: Value; readonly charger: Value; readonly through: Value | null },
  item: string,
): Figure {
  const named = (label: string): { item: string; label: string } => ({ item, label: `${label}, ${item}` })
  const reaching = through
    ? make.work('inlet-phases', phasesUsed, { outlet, charger: through }, named('Phases outlet and inlet have'))
    : outlet
  return make.work('phases', phasesUsed, { outlet: reaching, charger }, named('Phases used'))
}

function placeReads(m: Model, ask: Ask, p: ChargingPlace) {
  if (isGap(p.socket)) return { by: 'gap' as const, socket: p.socket }
  if (p.socket.value === 'DC post')
    return { by: 'DC' as const, power: p.power, current: p.current, inlet: m.charging.dc.inletCurrent, pack: ask(packModel) }
  const { charger } = m.charging
  return {
    by: 'AC' as const,
    circuit: p.current,
    share: shareFor(m),
    outlet: outletLimit(p.socket.value),
    cable: p.cable,
    setTo: isGap(p.setTo) ? null : p.setTo,
    voltage: p.voltage,
    phases: p.phases,
    through: inletPhases(m),
    charger: {
      power: charger.power,
      current: charger.current,
      efficiency: charger.efficiency,
      losses: from(ask(chargerLosses), c => c.losses),
      phases: charger.phases,
      setTo: charger.setTo,
      standing: charger.standingPower,
    },
  }
}

/** Leads with a control box of their own say what may be drawn; at a point it is the wall box that says it. */
const OWN_BOX: readonly string[] = ['household socket', 'industrial socket']

/** What flows at a place for hours, and what circuit, outlet and cable stand. */
export type Lead = {
  /** The most that flows for certain; undefined while what sets it is not known and the charger alone may stay within. */
  readonly flows: Value | undefined
  /** What the circuit, outlet and cable stand for hours; without the share some codes ask for. */
  readonly stands: Figure
  readonly rated: Figure
}
export const leads = study({
  id: 'lead',
  stage: 'pack',
  asks: 'How much current flows at each place for hours, and what do outlet, circuit and cable stand?',
  reads: m => {
    const places = Object.entries(m.charging.places).filter(([, p]) => isGap(p.socket) || p.socket.value !== 'DC post'),
      { charger } = m.charging
    return {
      names: places.map(([name]) => name),
      share: shareFor(m),
      places: places.map(([, p]) =>
        maybe({ socket: p.socket, outlet: isGap(p.socket) ? null : outletLimit(p.socket.value), circuit: p.current, cable: p.cable }),
      ),
      sets: places.map(([, p]) => (isGap(p.setTo) ? null : p.setTo)),
      draws: places.map(([, p]) =>
        maybe({
          power: charger.power,
          voltage: p.voltage,
          phases: p.phases,
          taken: charger.phases,
          through: inletPhases(m),
          efficiency: charger.efficiency,
        }),
      ),
      carries: maybe(m.charging.inlet.current),
    }
  },
  answer: (k, make): { places: Readonly<Record<string, Lead | Gaps>> } => ({
    places: Object.fromEntries(
      k.places.map((place, i): [string, Lead | Gaps] => {
        const item = k.names[i] as string
        return [
          item,
          isGaps(place)
            ? place
            : lead(make, { ...(place as PlaceKnown), share: k.share, inlet: k.carries }, k.sets[i] as never, k.draws[i] as never, item),
        ]
      }),
    ),
  }),
})
type PlaceKnown = { readonly socket: Fact<string>; readonly outlet: Fact; readonly circuit: Fact; readonly cable: Fact }
type Draws = {
  readonly power: Value
  readonly voltage: Value
  readonly phases: Value
  readonly taken: Value
  readonly through: Value | null
  readonly efficiency: Fact
}

function lead(
  make: Maker,
  { socket, outlet, circuit, cable, share, inlet }: PlaceKnown & { readonly share: Fact; readonly inlet: Fact | Gaps },
  set: Fact | null,
  draws: Draws | Gaps,
  item: string,
): Lead {
  const named = (label: string): { item: string; label: string } => ({ item, label: `${label}, ${item}` })
  const stands = make.work(
    'stands',
    continuousOutletCurrent,
    { circuit, share, outlet, cable },
    named('Current for hours that outlet, circuit and cable stand'),
  )
  const rated =
    share === CIRCUIT_SHARE.whole
      ? stands
      : make.work(
          'rated',
          continuousOutletCurrent,
          { circuit, share: CIRCUIT_SHARE.whole, outlet, cable },
          named('Current outlet, circuit and cable are rated for'),
        )
  make.work('cable-room', currentRoom, { carries: cable, current: circuit }, named('Room of the cable over its circuit'))
  const lets = set ?? (OWN_BOX.includes(socket.value) ? cable : undefined)
  if (lets !== undefined)
    make.work('room', currentRoom, { carries: stands, current: lets }, named('Room over what box or lead lets the car draw'))
  const drawn = isGaps(draws) ? undefined : drawnBy(make, draws, item)
  const current =
    lets && drawn ? make.work('current', lesserCurrent, { one: lets, other: drawn.best }, named('Current that flows for hours')) : undefined
  // Judged is what flows for sure; on an assumed efficiency what box or lead lets it draw, or what it draws at least.
  const atLeast = drawn && (drawn.sure || drawn.least.value > stands.value) ? drawn.least : undefined,
    flows =
      lets === undefined
        ? atLeast
        : drawn?.sure
          ? current
          : drawn
            ? make.work('current-at-most', lesserCurrent, { one: lets, other: UNKNOWN }, named('Current that may flow for hours'))
            : lets
  if (flows && !isGaps(inlet))
    make.work('inlet-room', currentRoom, { carries: inlet, current: flows }, named('Room of the AC inlet over what flows'))
  return { flows, stands, rated }
}
/** What limits a current where only an assumed efficiency would tell. */
const UNKNOWN = standard(
  'draw.unknown',
  'what the charger draws is assumed only, and limits nothing',
  'I_x',
  Number.POSITIVE_INFINITY,
  'A',
  {
    work: 'definition',
    place: 'no limit is known',
  },
)
/** What the charger draws at full power: by its efficiency, and at least; both are one where the efficiency is stated. */
function drawnBy(
  make: Maker,
  { power, voltage, phases, taken, through, efficiency }: Draws,
  item: string,
): { readonly best: Figure; readonly least: Figure; readonly sure: boolean } {
  const named = (label: string): { item: string; label: string } => ({ item, label: `${label}, ${item}` }),
    sure = efficiency.origin?.how !== 'assumed'
  const mains = {
    power,
    phases: phasesOf(make, { outlet: phases, charger: taken, through }, item),
    voltage: make.work('phase-voltage', phaseVoltage, { voltage, phases }, named('Voltage of one phase')),
  }
  const best = make.work('draw', chargerDraw, { ...mains, efficiency }, named('Current of the charger at full power'))
  return {
    sure,
    best,
    least: sure
      ? best
      : make.work('draw-least', chargerDraw, { ...mains, efficiency: NO_LOSS }, named('Current the charger draws at least, at full power')),
  }
}

/** What each charging place gives for hours, and what of it reaches the pack. */
export const outlets = study({
  id: 'outlet',
  stage: 'pack',
  asks: 'What does each charging place give for hours, and what of it reaches the pack?',
  reads: (m, ask) => ({
    names: Object.keys(m.charging.places),
    places: Object.values(m.charging.places).map(p => maybe(placeReads(m, ask, p))),
  }),
  answer: ({ names, places }, make): { places: Readonly<Record<string, Supply | Gaps>> } => ({
    places: Object.fromEntries(places.map((k, i) => [names[i], isGaps(k) ? k : supply(make, k as never, names[i] as string)])),
  }),
})

function supply(make: Maker, k: Known<ReturnType<typeof placeReads>>, item: string): Supply {
  const named = (label: string): { item: string; label: string } => ({ item, label: `${label}, ${item}` })
  if (k.by === 'DC') {
    const current = make.work('current', lesserCurrent, { one: k.current, other: k.inlet }, named('Current of post and inlet')),
      voltage = k.pack.highestVoltage
    make.work('inlet-room', currentRoom, { carries: k.inlet, current: k.current }, named('Room of the inlet over the post'))
    make.work(
      'post-room',
      powerRoom,
      { current, voltage, power: k.power },
      named('Power of post and inlet current beyond that of the post'),
    )
    return { kind: 'DC', power: k.power, current, voltage, outlet: null, losses: null }
  }
  if (k.by === 'gap') throw new RangeError('a place without a socket has no supply')
  const { charger } = k
  const stands = make.work(
    'current',
    continuousOutletCurrent,
    { circuit: k.circuit, share: k.share, outlet: k.outlet, cable: k.cable },
    named('Current for hours'),
  )
  const current = k.setTo
    ? make.work('set', lesserCurrent, { one: stands, other: k.setTo }, named('Current for hours, as far as the wall box lets it'))
    : stands
  const voltage = make.work('phase-voltage', phaseVoltage, { voltage: k.voltage, phases: k.phases }, named('Voltage of one phase'))
  const phases = phasesOf(make, { outlet: k.phases, charger: charger.phases, through: k.through }, item)
  const power = make.work('power', outletPower, { phases, voltage, current }, named('Power at the wall'))
  const draw = make.work(
    'draw',
    chargerDraw,
    { power: charger.power, efficiency: charger.efficiency, phases, voltage },
    named('Current of the charger at full power'),
  )
  const { input, parts } = charger.losses as ChargerLosses
  const taken = make.work('taken', chargerTakes, { outlet: power, input }, named('Power the charger takes at the wall'))
  const loss = make.work('loss', chargerLoss, { ...parts, power: taken }, named('Loss of the charger'))
  const efficiency = make.work('efficiency', efficiencyOfLoss, { loss, power: taken }, named('Efficiency of the charger at this power'))
  const toPack = make.work(
    'power-to-pack',
    powerToPack,
    { outlet: power, efficiency, charger: charger.power, standing: charger.standing },
    named('Power to the pack'),
  )
  make.work(
    'charger-room',
    powerRoom,
    { current: charger.current, voltage: charger.setTo, power: toPack },
    named('Power of the charger’s current beyond what comes'),
  )
  return { kind: 'AC', current: charger.current, voltage: charger.setTo, outlet: { current, power, draw }, power: toPack, losses: parts }
}
