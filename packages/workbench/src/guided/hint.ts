import { fieldAt } from '@ampwright/conversion'
import type { Kind } from '@ampwright/engine'
import { kindAsked } from './conversion-text.ts'

/** One answer of each kind as somebody would type it. */
const TYPED: Partial<Readonly<Record<Kind, string>>> = {
  mass: '460 kg',
  volume: '20 l',
  length: '2350 mm',
  power: '66 kW',
  torque: '135 Nm',
  'rotational speed': '6500 rpm',
  count: '2',
  ratio: '3.9',
  temperature: '5 °C',
  altitude: '200 m',
  speed: '100 km/h',
  time: '9.5 s',
  slope: '20 %',
  distance: '160 km',
  share: '80 %',
  voltage: '230 V',
  current: '16 A',
  duration: '8 h',
  money: '15000 €',
}
/** Where that of the kind would mislead. */
const AT: Readonly<Record<string, string>> = {
  'donor.ratings.total': '1360 kg',
  'donor.weighing.tank': '45 l',
  'donor.removed.engine.x': '150 mm',
  'donor.seats.front.x': '1300 mm',
  'brief.luggage': '40 kg',
  'brief.loads.usual.luggage': '40 kg',
  'brief.reserve': '10 %',
  'brief.conditions.head-wind': '0 km/h',
  'trips.named.usual.head-wind': '0 km/h',
  'trips.named.usual.slope': '0 %',
  'trips.named.usual.cabin-power': '1.5 kW',
  'trips.named.usual.other-power': '300 W',
  'charging.places.home.phases': '1',
  'donor.gearbox.gears.first': '3.6',
  'donor.transfer-case.high': '1',
  'donor.transfer-case.low': '2.3',
}

/** How an answer is typed: an example with its unit, a day, a marking; nothing where one chooses or writes words. */
export function hint(path: string): string | undefined {
  const leaf = fieldAt(path, kindAsked)
  if (leaf?.is === 'quantity') return AT[path] ?? TYPED[leaf.kind]
  return leaf?.is === 'date' ? '1996-04' : leaf?.is === 'tyre' ? '185/60 R14 82H' : undefined
}
