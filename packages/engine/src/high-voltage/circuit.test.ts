import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { solveNetwork } from '../numerics/index.ts'
import {
  boxesWithoutFuse,
  type Circuit,
  type Conductor,
  disconnectBreaks,
  ENDS_OF,
  type End,
  isUser,
  type Part,
  type PartKind,
  prechargeWay,
  unguarded,
  unjoined,
  unswitchedPoles,
  usersThrough,
} from './circuit.ts'

const wire = (text: string, i: number): Conductor => {
  const [a, ae, b, be] = text.split(' ') as [string, End, string, End]
  return { name: `w${i + 1}`, from: { part: a, end: ae }, to: { part: b, end: be } }
}
/** Two boxes in series, both poles switched, precharge beside the plus contactor, two users. */
const PARTS: readonly Part[] = [
  { name: 'low', kind: 'battery box' },
  { name: 'high', kind: 'battery box' },
  { name: 'fuse-low', kind: 'fuse' },
  { name: 'fuse-high', kind: 'fuse' },
  { name: 'plug', kind: 'service disconnect' },
  { name: 'main-minus', kind: 'contactor', role: 'main' },
  { name: 'main-plus', kind: 'contactor', role: 'main' },
  { name: 'pre', kind: 'contactor', role: 'precharge' },
  { name: 'resistor', kind: 'precharge resistor' },
  { name: 'plus-bar', kind: 'bar' },
  { name: 'minus-bar', kind: 'bar' },
  { name: 'inverter', kind: 'inverter' },
  { name: 'dc-dc', kind: 'DC-DC' },
  { name: 'fuse-dc-dc', kind: 'fuse' },
]
const WIRES: readonly Conductor[] = [
  'low minus main-minus in',
  'main-minus out minus-bar bar',
  'low plus fuse-low in',
  'fuse-low out plug in',
  'plug out high minus',
  'high plus fuse-high in',
  'fuse-high out main-plus in',
  'main-plus out plus-bar bar',
  'main-plus in pre in',
  'pre out resistor in',
  'resistor out plus-bar bar',
  'plus-bar bar inverter plus',
  'minus-bar bar inverter minus',
  'plus-bar bar fuse-dc-dc in',
  'fuse-dc-dc out dc-dc plus',
  'minus-bar bar dc-dc minus',
].map(wire)
const WHOLE: Circuit = { parts: PARTS, wires: WIRES }
const without = (...names: string[]): Circuit => ({ ...WHOLE, wires: WIRES.filter(w => !names.includes(w.name)) })
const rewired = (name: string, text: string): Circuit => ({
  ...WHOLE,
  wires: WIRES.map(w => (w.name === name ? { ...wire(text, 0), name } : w)),
})

describe('a whole circuit', () => {
  it('has no loose end, both poles switched, a fuse in each box, a disconnect in the string, and a precharge', () => {
    expect(unjoined(WHOLE)).toEqual({ loose: [], astray: [] })
    expect(unswitchedPoles(WHOLE)).toEqual([])
    expect(boxesWithoutFuse(WHOLE)).toEqual([])
    expect(disconnectBreaks(WHOLE)).toBe(true)
    expect(prechargeWay(WHOLE)).toEqual({ contactor: 'pre', resistor: 'resistor' })
  })
  it('carries the current of all in its string, of one in its own wires, and of none in the precharge', () => {
    const through = usersThrough(WHOLE)
    expect(through.get('w5')).toEqual({ users: ['inverter', 'dc-dc'], divides: false })
    expect(through.get('w12')?.users).toEqual(['inverter'])
    expect(through.get('w15')?.users).toEqual(['dc-dc'])
    expect(through.get('w10')?.users).toEqual([])
  })
  it('says where its current divides between two ways', () => {
    const twice = { ...WHOLE, wires: [...WIRES, wire('plus-bar bar inverter plus', 20)] }
    expect(usersThrough(twice).get('w12')).toEqual({ users: ['inverter'], divides: true })
    expect(usersThrough(twice).get('w15')).toEqual({ users: ['dc-dc'], divides: false })
  })
})

describe('a spoiled circuit', () => {
  it('names a loose end and an end no part has', () => {
    expect(unjoined(without('w8')).loose).toEqual([{ part: 'main-plus', end: 'out' }])
    expect(unjoined(rewired('w8', 'main-plus plus plus-bar bar')).astray).toEqual([{ wire: 'w8', at: { part: 'main-plus', end: 'plus' } }])
  })
  it('names the pole that no contactor parts from the batteries', () => {
    expect(unswitchedPoles(rewired('w2', 'low minus minus-bar bar'))).toEqual([
      { user: 'inverter', end: 'minus', box: 'low' },
      { user: 'dc-dc', end: 'minus', box: 'low' },
    ])
  })
  it('does not take a precharge or a fuse for a switch', () => {
    expect(unswitchedPoles(rewired('w10', 'main-plus in resistor in')).map(u => u.end)).toEqual(['plus', 'plus'])
  })
  it('names the box whose fuse is passed by', () => {
    expect(boxesWithoutFuse({ ...WHOLE, wires: [...WIRES, wire('high plus main-plus in', 20)] })).toEqual(['high'])
    expect(boxesWithoutFuse(without('w3'))).toEqual(['low'])
  })
  it('finds no precharge where resistor or contactor is missing from the way', () => {
    expect(prechargeWay(without('w10'))).toBeUndefined()
    expect(prechargeWay(rewired('w9', 'main-plus in resistor in'))).toBeUndefined()
    expect(prechargeWay(rewired('w11', 'resistor out minus-bar bar'))).toBeUndefined()
  })
  it('sees a disconnect that is passed by', () => {
    expect(disconnectBreaks({ ...WHOLE, wires: [...WIRES, wire('fuse-low out high minus', 20)] })).toBe(false)
  })
  it('leaves a wire unguarded once no fuse that melts in time stands in every way round through it', () => {
    expect(unguarded(WHOLE, () => true)).toEqual([])
    const behind = unguarded(WHOLE, (fuse, w) => fuse === 'fuse-dc-dc' || w !== 'w15')
    expect(behind).toEqual([])
    expect(unguarded(WHOLE, (fuse, w) => (fuse === 'fuse-dc-dc' ? w !== 'w15' : !['w14', 'w15', 'w16'].includes(w)))).toEqual(['w15'])
    expect(unguarded(WHOLE, fuse => fuse === 'fuse-dc-dc')).toEqual(['w1', 'w2', 'w3', 'w4', 'w5', 'w6', 'w7', 'w8', 'w12', 'w13'])
  })
})

/** Circuits of any shape: parts drawn by kind, wires between any of their ends. */
const anyCircuit = fc
  .record({
    kinds: fc.array(fc.constantFrom(...(Object.keys(ENDS_OF) as PartKind[])), { minLength: 2, maxLength: 9 }),
    joins: fc.array(fc.tuple(fc.nat(), fc.nat()), { minLength: 1, maxLength: 16 }),
    roles: fc.array(fc.constantFrom('main' as const, 'precharge' as const), { minLength: 9, maxLength: 9 }),
  })
  .map(({ kinds, joins, roles }): Circuit => {
    const parts = kinds.map((kind, i): Part => ({ name: `p${i}`, kind, ...(kind === 'contactor' ? { role: roles[i]! } : {}) })),
      ends = parts.flatMap(({ name, kind }) => ENDS_OF[kind].map(end => ({ part: name, end })))
    return { parts, wires: joins.map(([a, b], i) => ({ name: `w${i}`, from: ends[a % ends.length]!, to: ends[b % ends.length]! })) }
  })

/** The circuit as resistances, for an independent look: every wire and closed part 1 Ω, batteries lift by a volt, users draw as told. */
function flows(circuit: Circuit, opens: (p: Part) => boolean, user: string | undefined, broken?: string) {
  const index = new Map<string, number>(),
    at = (part: string, end: string): number => index.get(`${part} ${end}`) ?? (index.set(`${part} ${end}`, index.size), index.size - 1)
  const branches = [
    ...circuit.wires
      .filter(w => w.name !== broken)
      .map(w => ({ name: w.name, from: at(w.from.part, w.from.end), to: at(w.to.part, w.to.end), resistance: 1 })),
    ...circuit.parts.flatMap(p => {
      const [a, b] = ENDS_OF[p.kind]
      if (a === undefined || b === undefined || opens(p) || (isUser(p) && p.name !== user)) return []
      const lifts = p.kind === 'battery box' ? -(1 + Math.sqrt(2 + Number(p.name.replace(/\D/g, '') || 0))) : 0
      return [{ name: p.name, from: at(p.name, a), to: at(p.name, b), resistance: 1, lifts }]
    }),
  ]
  const solved = solveNetwork(Math.max(index.size, 1), branches)
  return new Map(branches.map((b, i) => [b.name, Math.abs(solved?.currents[i] ?? 0)]))
}

describe('circuits of any shape, against currents reckoned by nodal analysis', () => {
  it('a user through which current flows with all but the precharge closed lies in a wire’s list, and the reverse', () => {
    fc.assert(
      fc.property(anyCircuit, circuit => {
        const through = usersThrough(circuit),
          precharge = (p: Part): boolean => p.kind === 'precharge resistor' || (p.kind === 'contactor' && p.role === 'precharge')
        for (const { name } of circuit.parts.filter(isUser)) {
          const current = flows(circuit, precharge, name),
            draws = (current.get(name) ?? 0) > 1e-9
          for (const w of circuit.wires) {
            const listed = through.get(w.name)!
            // Where it draws nothing two batteries may cancel; where it draws, a wire with no current may lie across a balanced bridge.
            if (draws && !listed.divides && w.from.part + w.from.end !== w.to.part + w.to.end)
              expect([w.name, listed.users.includes(name)]).toEqual([
                w.name,
                Math.abs(current.get(w.name)! - current.get(name)!) < 1e-9 &&
                  current.get(w.name)! > 1e-9 &&
                  !(flows(circuit, precharge, name, w.name).get(name)! > 1e-9),
              ])
          }
        }
      }),
      { numRuns: runs(6000) },
    )
  })
  it('no user whose poles are called switched draws anything with every contactor open', () => {
    fc.assert(
      fc.property(anyCircuit, circuit => {
        const live = new Set(unswitchedPoles(circuit).map(u => `${u.user} ${u.end}`))
        for (const { name } of circuit.parts.filter(isUser)) {
          if (live.has(`${name} plus`) && live.has(`${name} minus`)) continue
          const current = flows(circuit, p => p.kind === 'contactor', name)
          expect(current.get(name)!).toBeLessThan(1e-9)
        }
      }),
      { numRuns: runs(6000) },
    )
  })
  it('whatever is joined anew, no circuit passes with a pole that hangs on a battery', () => {
    const ends = PARTS.flatMap(({ name, kind }) => ENDS_OF[kind].map(end => ({ part: name, end })))
    fc.assert(
      fc.property(fc.nat(WIRES.length - 1), fc.nat(ends.length - 1), fc.nat(ends.length - 1), (i, a, b) => {
        const circuit = { ...WHOLE, wires: WIRES.map((w, k) => (k === i ? { ...w, from: ends[a]!, to: ends[b]! } : w)) }
        const named = unswitchedPoles(circuit)
        // Walk by hand from every pole of every user over wires and closed parts.
        for (const { name } of PARTS.filter(isUser))
          for (const end of ['plus', 'minus'] as const) {
            const seen = new Set([`${name} ${end}`]),
              ahead = [...seen]
            for (let t = ahead.pop(); t !== undefined; t = ahead.pop()) {
              const [part, at] = t.split(' ') as [string, End],
                kind = PARTS.find(p => p.name === part)!.kind
              const next = circuit.wires.flatMap(w =>
                `${w.from.part} ${w.from.end}` === t ? [w.to] : `${w.to.part} ${w.to.end}` === t ? [w.from] : [],
              )
              if (!['contactor', 'battery box'].includes(kind) && !isUser({ kind }))
                next.push(...ENDS_OF[kind].filter(e => e !== at).map(e => ({ part, end: e })))
              for (const n of next)
                if (!seen.has(`${n.part} ${n.end}`)) {
                  seen.add(`${n.part} ${n.end}`)
                  ahead.push(`${n.part} ${n.end}`)
                }
            }
            const hangs = [...seen].some(t => PARTS.find(p => p.name === t.split(' ')[0])!.kind === 'battery box')
            expect(named.some(u => u.user === name && u.end === end)).toBe(hangs)
          }
      }),
      { numRuns: runs(10_000) },
    )
  })
})
