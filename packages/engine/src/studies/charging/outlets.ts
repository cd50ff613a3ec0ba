import {
  CIRCUIT_SHARE,
  chargerDraw,
  continuousOutletCurrent,
  lesserCurrent,
  outletLimit,
  outletPower,
  phasesUsed,
  phaseVoltage,
} from '../../charging/outlet.ts'
import { powerToPack } from '../../charging/power-to-pack.ts'
import { currentRoom, powerRoom } from '../../charging/room.ts'
import type { ChargingPlace } from '../../model/charging.ts'
import type { Model } from '../../model/model.ts'
import { type Fact, type Figure, isGap, type Value } from '../../working/value.ts'
import { packModel } from '../pack/pack-model.ts'
import { type Ask, type Gaps, isGaps, type Known, type Maker, maybe, study } from '../study.ts'

/** What one place puts into the pack. */
export type Supply = {
  readonly kind: 'AC' | 'DC'
  readonly power: Value
  readonly current: Value
  readonly voltage: Value
  /** At the wall, for hours; null at a post. */
  readonly outlet: { readonly current: Value; readonly power: Value; readonly draw: Value } | null
}
/** Countries whose code lets four fifths of a circuit be drawn for hours. */
const FOUR_FIFTHS: readonly string[] = ['us', 'ca', 'ca-qc']

function placeReads(m: Model, ask: Ask, p: ChargingPlace) {
  if (isGap(p.socket)) return { by: 'gap' as const, socket: p.socket }
  if (p.socket.value === 'DC post')
    return { by: 'DC' as const, power: p.power, current: p.current, inlet: m.charging.dc.inletCurrent, pack: ask(packModel) }
  const { charger } = m.charging,
    code = isGap(m.brief.rules) ? '' : m.brief.rules.value
  return {
    by: 'AC' as const,
    circuit: p.current,
    share: FOUR_FIFTHS.includes(code) ? CIRCUIT_SHARE.eighty : CIRCUIT_SHARE.whole,
    outlet: outletLimit(p.socket.value),
    cable: p.cable,
    voltage: p.voltage,
    phases: p.phases,
    charger: {
      power: charger.power,
      current: charger.current,
      efficiency: charger.efficiency,
      phases: charger.phases,
      setTo: charger.setTo,
      standing: charger.standingPower,
    },
  }
}

/** What lead and circuit of each place let the car draw, and what such an outlet stands for hours. */
export type Lead = { readonly current: Figure; readonly outlet: Fact; readonly room: Figure }
export const leads = study({
  id: 'lead',
  stage: 'pack',
  asks: 'How much current does the lead let the car draw at each place, and what does the outlet stand?',
  reads: m => {
    const places = Object.entries(m.charging.places).filter(([, p]) => isGap(p.socket) || p.socket.value !== 'DC post')
    return {
      names: places.map(([name]) => name),
      places: places.map(([, p]) =>
        maybe({ socket: p.socket, outlet: isGap(p.socket) ? null : outletLimit(p.socket.value), one: p.current, other: p.cable }),
      ),
    }
  },
  answer: ({ names, places }, make): { places: Readonly<Record<string, Lead | Gaps>> } => ({
    places: Object.fromEntries(
      places.map((k, i): [string, Lead | Gaps] => {
        const item = names[i] as string
        if (isGaps(k)) return [item, k]
        return [
          item,
          {
            outlet: k.outlet as Fact,
            room: make.work(
              'cable-room',
              currentRoom,
              { carries: k.other, current: k.one },
              { item, label: `Room of the cable over its circuit, ${item}` },
            ),
            current: make.work(
              'current',
              lesserCurrent,
              { one: k.one, other: k.other },
              { item, label: `Current the lead allows, ${item}` },
            ),
          },
        ]
      }),
    ),
  }),
})

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
    return { kind: 'DC', power: k.power, current, voltage, outlet: null }
  }
  if (k.by === 'gap') throw new RangeError('a place without a socket has no supply')
  const { charger } = k
  const current = make.work(
    'current',
    continuousOutletCurrent,
    { circuit: k.circuit, share: k.share, outlet: k.outlet, cable: k.cable },
    named('Current for hours'),
  )
  const voltage = make.work('phase-voltage', phaseVoltage, { voltage: k.voltage, phases: k.phases }, named('Voltage of one phase'))
  const phases = make.work('phases', phasesUsed, { outlet: k.phases, charger: charger.phases }, named('Phases used'))
  const power = make.work('power', outletPower, { phases, voltage, current }, named('Power at the wall'))
  const draw = make.work(
    'draw',
    chargerDraw,
    { power: charger.power, efficiency: charger.efficiency, phases, voltage },
    named('Current of the charger at full power'),
  )
  const toPack = make.work(
    'power-to-pack',
    powerToPack,
    { outlet: power, efficiency: charger.efficiency, charger: charger.power, standing: charger.standing },
    named('Power to the pack'),
  )
  make.work(
    'charger-room',
    powerRoom,
    { current: charger.current, voltage: charger.setTo, power: toPack },
    named('Power of the charger’s current beyond what comes'),
  )
  return { kind: 'AC', current: charger.current, voltage: charger.setTo, outlet: { current, power, draw }, power: toPack }
}
