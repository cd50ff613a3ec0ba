import {
  boxesWithoutFuse,
  type Circuit,
  disconnectBreaks,
  isUser,
  prechargeWay,
  type Terminal,
  type Unswitched,
  unjoined,
  unswitchedPoles,
  usersThrough,
} from '../../high-voltage/circuit.ts'
import type { CircuitPart, Wire } from '../../model/high-voltage.ts'
import type { Model } from '../../model/model.ts'
import type { Gap, Value } from '../../working/value.ts'
import { type Gaps, isGaps, type Maker, maybe, once, study } from '../study.ts'

/** The circuit as far as its wires are told, and what its shape alone says. */
export type CircuitAnswer = {
  readonly circuit: Circuit
  /** Ends of wires and roles of contactors nobody has told yet: what the shape says is then no more than half the truth. */
  readonly untold: readonly Gap[]
  readonly loose: readonly Terminal[]
  readonly astray: readonly { readonly wire: string; readonly at: Terminal }[]
  readonly unswitched: readonly Unswitched[]
  readonly fuseless: readonly string[]
  readonly precharge: { readonly contactor: string; readonly resistor: string } | undefined
  readonly breaks: boolean
  /** Users whose current goes through each wire, and the wires in which it divides between ways. */
  readonly through: Readonly<Record<string, { readonly users: readonly string[]; readonly divides: boolean }>>
}
export const partsOf = (m: Model): readonly (readonly [string, CircuitPart])[] =>
  Object.entries(m.highVoltage.parts).sort(([a], [b]) => (a < b ? -1 : 1))
export const wiresOf = (m: Model): readonly (readonly [string, Wire])[] =>
  Object.entries(m.highVoltage.wires).sort(([a], [b]) => (a < b ? -1 : 1))
/** Nobody has described the circuit yet. */
export const noCircuit = (m: Model): boolean => partsOf(m).length === 0 && wiresOf(m).length === 0

/** How the circuit hangs together. */
export const circuit = study({
  id: 'circuit',
  stage: 'high voltage',
  asks: 'Does the circuit hang together as it must?',
  reads: m => ({
    parts: partsOf(m).map(([name, p]) => ({ name, kind: p.kind, role: p.kind === 'contactor' ? maybe(p.role) : null })),
    wires: wiresOf(m).map(([name, w]) => ({ name, ends: maybe({ from: w.from, fromEnd: w.fromEnd, to: w.to, toEnd: w.toEnd }) })),
  }),
  answer: ({ parts, wires }, make): CircuitAnswer => {
    const told: Circuit = {
      parts: parts.map(({ name, kind, role }) => ({
        name,
        kind,
        ...(role === null || isGaps(role) ? {} : { role: (role as Value<'main' | 'precharge' | 'charging'>).value }),
      })),
      wires: wires.flatMap(({ name, ends }) => {
        if (isGaps(ends)) return []
        const { from, fromEnd, to, toEnd } = ends as Ends
        return [{ name, from: { part: from.value, end: fromEnd.value }, to: { part: to.value, end: toEnd.value } }]
      }),
    }
    const through = usersThrough(told)
    listed(make, told)
    return {
      circuit: told,
      untold: once([
        ...parts.flatMap(p => (isGaps(p.role) ? p.role.gaps : [])),
        ...wires.flatMap(w => (isGaps(w.ends) ? w.ends.gaps : [])),
      ]),
      ...unjoined(told),
      unswitched: unswitchedPoles(told),
      fuseless: boxesWithoutFuse(told),
      precharge: prechargeWay(told),
      breaks: disconnectBreaks(told),
      through: Object.fromEntries(through),
    }
  },
})
type Ends = {
  readonly from: Value<string>
  readonly fromEnd: Value<Terminal['end']>
  readonly to: Value<string>
  readonly toEnd: Value<Terminal['end']>
}
/** Pin list: each end of each part, and what is joined to it. */
function listed(make: Maker, { parts, wires }: Circuit): void {
  make.table('parts', {
    label: 'Parts of the circuit, and what is joined to their ends',
    columns: [
      { key: 'kind', label: 'part' },
      { key: 'plus', label: 'at plus, in or bar' },
      { key: 'minus', label: 'at minus or out' },
    ],
    rows: parts.map(({ name, kind, role }) => {
      const at = (...ends: Terminal['end'][]): string =>
        wires
          .flatMap(w => [
            ...(w.from.part === name && ends.includes(w.from.end) ? [`${w.name} to ${w.to.part}`] : []),
            ...(w.to.part === name && ends.includes(w.to.end) ? [`${w.name} to ${w.from.part}`] : []),
          ])
          .join(', ')
      return {
        name,
        cells: {
          kind: role === undefined ? kind : `${role} ${kind}`,
          plus: at('plus', 'in', 'bar') || 'nothing',
          ...(kind === 'bar' ? {} : { minus: at('minus', 'out') || 'nothing' }),
        },
      }
    }),
  })
}

/** What a rule about the shape of the circuit must wait for: a word nobody has told. */
export const untoldOf = (a: CircuitAnswer): Gaps | undefined => (a.untold.length > 0 ? { gaps: a.untold } : undefined)
/** Parts that take or give power: what the bus is there for. */
export const usersOf = ({ circuit: { parts } }: CircuitAnswer): readonly string[] => parts.filter(isUser).map(p => p.name)
