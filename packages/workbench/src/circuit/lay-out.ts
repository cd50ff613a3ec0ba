import type { Edit } from '@ampwright/conversion'
import { type End, type Field, isGap, type Model } from '@ampwright/engine'
import { Refusal } from '../refusal.ts'

type Group = Readonly<Record<string, string>>
type User = { readonly name: string; readonly part: Group; readonly fused: boolean }

/** Names the circuit gives itself; a box of that name gets another. */
const TAKEN: readonly string[] = [
  'service-plug',
  'sensor',
  'main-minus',
  'main-plus',
  'precharge',
  'precharge-resistor',
  'plus-bar',
  'minus-bar',
]

/**
 * A circuit for the boxes, units and users of a conversion, as one batch of edits: one string over all boxes from the rear to the front, a fuse in each,
 * a disconnect after the first, a main contactor in each pole with the precharge beside the plus one, and a fuse before every user but a single inverter.
 *
 * What the file says of main fuse and contactor is taken over; sizes, lengths and everything else are left open. Throws a Refusal where a circuit stands in
 * the file already, where there is no box, or where strings lie side by side.
 */
export function circuitEdits(m: Model): readonly Edit[] {
  if (Object.keys(m.highVoltage.parts).length + Object.keys(m.highVoltage.wires).length > 0)
    throw new Refusal('circuit: high-voltage describes a circuit already; change that one, or take it out first')
  const order = boxesInOrder(m)
  if (order.length === 0) throw new Refusal('circuit: pack.boxes has no box yet; say first in which boxes the modules stand')
  const { strings } = m.pack
  if (!isGap(strings) && strings.value !== 1)
    throw new Refusal(
      `circuit: pack.strings: found ${strings.value}; a circuit is laid out for one string, strings side by side are described by hand`,
    )
  const users = usersOf(m)
  if (users.length === 0) throw new Refusal('circuit: drive.units has no drive unit yet; say first what drives the car')
  const parts = new Map<string, Group>(),
    wires: string[][] = []
  const wire = (from: string, fromEnd: End, to: string, toEnd: End): number => wires.push([from, fromEnd, to, toEnd])
  const used = new Set([...TAKEN, ...users.flatMap(u => [u.name, `fuse-${u.name}`])])
  const boxes = order.map(box => ({ box, name: used.has(box) || used.has(`fuse-${box}`) ? `box-${box}` : box }))
  for (const { box, name } of boxes) parts.set(name, { kind: 'battery box', box })
  for (const { name } of boxes)
    parts.set(`fuse-${name}`, { kind: 'fuse', ...typed({ rating: m.pack.limits.fuse, voltage: m.pack.limits.fuseVoltage }) })
  parts.set('service-plug', { kind: 'service disconnect' })
  parts.set('sensor', { kind: 'current sensor' })
  const main: Group = {
    kind: 'contactor',
    role: 'main',
    ...typed({ current: m.pack.limits.contactor, voltage: m.pack.limits.contactorVoltage }),
  }
  parts.set('main-minus', main)
  parts.set('main-plus', main)
  parts.set('precharge', { kind: 'contactor', role: 'precharge' })
  parts.set('precharge-resistor', { kind: 'precharge resistor' })
  parts.set('plus-bar', { kind: 'bar' })
  parts.set('minus-bar', { kind: 'bar' })

  const first = boxes[0] as { readonly name: string }
  wire(first.name, 'minus', 'sensor', 'in')
  wire('sensor', 'out', 'main-minus', 'in')
  wire('main-minus', 'out', 'minus-bar', 'bar')
  boxes.forEach(({ name }, i) => {
    const next = boxes[i + 1]
    wire(name, 'plus', `fuse-${name}`, 'in')
    if (i === 0) wire(`fuse-${name}`, 'out', 'service-plug', 'in')
    const from = i === 0 ? 'service-plug' : `fuse-${name}`
    wire(from, 'out', next?.name ?? 'main-plus', next ? 'minus' : 'in')
  })
  wire('main-plus', 'out', 'plus-bar', 'bar')
  wire('main-plus', 'in', 'precharge', 'in')
  wire('precharge', 'out', 'precharge-resistor', 'in')
  wire('precharge-resistor', 'out', 'plus-bar', 'bar')
  for (const { name, part, fused } of users) {
    parts.set(name, part)
    if (fused) {
      parts.set(`fuse-${name}`, { kind: 'fuse' })
      wire('plus-bar', 'bar', `fuse-${name}`, 'in')
      wire(`fuse-${name}`, 'out', name, 'plus')
    } else wire('plus-bar', 'bar', name, 'plus')
    wire('minus-bar', 'bar', name, 'minus')
  }
  return [
    ...[...parts].map(([name, now]): Edit => ({ path: ['high-voltage', 'parts', name], now })),
    ...wires.map(
      ([from, fromEnd, to, toEnd], i): Edit => ({
        path: ['high-voltage', 'wires', `w${String(i + 1).padStart(2, '0')}`],
        now: { from, 'from-end': fromEnd, to, 'to-end': toEnd } as Group,
      }),
    ),
  ]
}

/** From the rear to the front, as far as places are known: so cables between boxes are short. */
function boxesInOrder(m: Model): readonly string[] {
  const at = (name: string): number => {
    const x = m.pack.boxes[name]?.x
    return x === undefined || isGap(x) ? Number.NEGATIVE_INFINITY : x.value
  }
  return Object.keys(m.pack.boxes).sort((a, b) => at(b) - at(a) || (a < b ? -1 : 1))
}

const KINDS: readonly (readonly [RegExp, string])[] = [
  [/dc.?dc/i, 'DC-DC'],
  [/heat/i, 'heater'],
  [/compress/i, 'compressor'],
]
function usersOf(m: Model): readonly User[] {
  const units = Object.keys(m.drive.units).sort(),
    alone = units.length === 1
  const others = Object.keys(m.pack.users).flatMap((name): readonly User[] => {
    const kind = KINDS.find(([is]) => is.test(name))?.[1]
    return kind === undefined ? [] : [{ name, part: { kind }, fused: true }]
  })
  return [
    ...units.map((unit): User => ({ name: alone ? 'inverter' : `inverter-${unit}`, part: { kind: 'inverter', unit }, fused: !alone })),
    ...(units.length > 0 && m.charging.charger.given ? [{ name: 'charger', part: { kind: 'on-board charger' }, fused: true }] : []),
    ...(units.length > 0 && m.charging.dc.given ? [{ name: 'dc-inlet', part: { kind: 'DC inlet' }, fused: true }] : []),
    ...(units.length > 0 ? others : []),
    // Every car with a traction pack needs one.
    ...(units.length > 0 && !others.some(u => u.part['kind'] === 'DC-DC') ? [{ name: 'dc-dc', part: { kind: 'DC-DC' }, fused: true }] : []),
  ]
}

/** What somebody typed, by the key it goes to. */
const typed = (fields: Readonly<Record<string, Field>>): Group =>
  Object.fromEntries(
    Object.entries(fields).flatMap(([key, f]) => (isGap(f) || f.text === undefined || f.origin?.how === 'assumed' ? [] : [[key, f.text]])),
  )
