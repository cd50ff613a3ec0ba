/** Where a wire is joined to a part: the poles of what has poles, the two sides of what is passed through, the one bar of a bar. */
export type End = 'plus' | 'minus' | 'in' | 'out' | 'bar'
export type ContactorRole = 'main' | 'precharge' | 'charging'
export type PartKind =
  | 'battery box'
  | 'fuse'
  | 'contactor'
  | 'precharge resistor'
  | 'service disconnect'
  | 'current sensor'
  | 'bar'
  | 'inverter'
  | 'on-board charger'
  | 'DC inlet'
  | 'DC-DC'
  | 'heater'
  | 'compressor'
/** A part as the graph sees it. A contactor without a role is a contactor all the same. */
export type Part = { readonly name: string; readonly kind: PartKind; readonly role?: ContactorRole }
export type Terminal = { readonly part: string; readonly end: End }
export type Conductor = { readonly name: string; readonly from: Terminal; readonly to: Terminal }
export type Circuit = { readonly parts: readonly Part[]; readonly wires: readonly Conductor[] }

const POLES = ['plus', 'minus'] as const
const SIDES = ['in', 'out'] as const
/** The ends each kind of part has. */
export const ENDS_OF: Readonly<Record<PartKind, readonly End[]>> = {
  'battery box': POLES,
  fuse: SIDES,
  contactor: SIDES,
  'precharge resistor': SIDES,
  'service disconnect': SIDES,
  'current sensor': SIDES,
  bar: ['bar'],
  inverter: POLES,
  'on-board charger': POLES,
  'DC inlet': POLES,
  'DC-DC': POLES,
  heater: POLES,
  compressor: POLES,
}
const USERS: readonly PartKind[] = ['inverter', 'on-board charger', 'DC inlet', 'DC-DC', 'heater', 'compressor']
/** Hangs between the poles of the bus: draws from it, or feeds it. */
export const isUser = ({ kind }: Pick<Part, 'kind'>): boolean => USERS.includes(kind)
export const terminal = ({ part, end }: Terminal): string => `${part} ${end}`

/** Ends that no wire is joined to, and ends of wires that are on no part. */
export function unjoined({ parts, wires }: Circuit): {
  readonly loose: readonly Terminal[]
  readonly astray: readonly { readonly wire: string; readonly at: Terminal }[]
} {
  const all = parts.flatMap(({ name, kind }) => ENDS_OF[kind].map((end): Terminal => ({ part: name, end }))),
    there = new Set(all.map(terminal)),
    met = new Set(wires.flatMap(w => [terminal(w.from), terminal(w.to)]))
  return {
    loose: all.filter(t => !met.has(terminal(t))),
    astray: wires.flatMap(({ name, from, to }) => [from, to].filter(t => !there.has(terminal(t))).map(at => ({ wire: name, at }))),
  }
}

/** An edge of the graph: a wire, or the way through a part. Vertices are terminals. */
type Edge = { readonly is: 'wire' | 'part'; readonly name: string; readonly a: string; readonly b: string }

/** Every edge but those of the parts that are taken as open. */
function edges({ parts, wires }: Circuit, opens: (p: Part) => boolean): readonly Edge[] {
  return [
    ...wires.map((w): Edge => ({ is: 'wire', name: w.name, a: terminal(w.from), b: terminal(w.to) })),
    ...parts.flatMap((p): readonly Edge[] => {
      const [a, b] = ENDS_OF[p.kind]
      return a === undefined || b === undefined || opens(p)
        ? []
        : [{ is: 'part', name: p.name, a: terminal({ part: p.name, end: a }), b: terminal({ part: p.name, end: b }) }]
    }),
  ]
}

/** What hangs together: for each terminal, the name of its group. */
function groups(all: readonly Edge[]): (t: Terminal) => string {
  const above = new Map<string, string>()
  const top = (x: string): string => {
    let at = x
    for (let up = above.get(at); up !== undefined && up !== at; up = above.get(at)) at = up
    return at
  }
  for (const { a, b } of all) above.set(top(a), top(b))
  return t => top(terminal(t))
}

/** A pole of a user that stays joined to a battery with every contactor open. */
export type Unswitched = { readonly user: string; readonly end: End; readonly box: string }

/** Poles of users that no contactor parts from the batteries. A DC inlet and a charger count: their terminals are reached from outside. */
export function unswitchedPoles(circuit: Circuit): readonly Unswitched[] {
  // Neither the batteries nor the users themselves join one pole to the other here: each pole must have its own contactor.
  const group = groups(edges(circuit, p => p.kind === 'contactor' || p.kind === 'battery box' || isUser(p))),
    live = circuit.parts
      .filter(p => p.kind === 'battery box')
      .flatMap(({ name }) => POLES.map(end => ({ box: name, at: group({ part: name, end }) })))
  return circuit.parts.filter(isUser).flatMap(({ name }) =>
    POLES.flatMap((end): readonly Unswitched[] => {
      const at = group({ part: name, end }),
        box = live.find(l => l.at === at)
      return box ? [{ user: name, end, box: box.box }] : []
    }),
  )
}

/** Battery boxes of which no end leads straight into a fuse: a short of the cable that leaves them has nothing to melt. */
export function boxesWithoutFuse({ parts, wires }: Circuit): readonly string[] {
  const kind = new Map(parts.map(p => [p.name, p.kind]))
  const fused = (box: string, end: End): boolean => {
    const others = wires.flatMap(({ from, to }) =>
      from.part === box && from.end === end ? [to] : to.part === box && to.end === end ? [from] : [],
    )
    return others.length > 0 && others.every(o => kind.get(o.part) === 'fuse')
  }
  return parts.filter(p => p.kind === 'battery box' && !POLES.some(end => fused(p.name, end))).map(p => p.name)
}

/**
 * Sets of edges every two of which lie on a closed way through both: what a current can flow round. A wire alone in its set carries nothing.
 *
 * Source: Hopcroft and Tarjan, biconnected components, Communications of the ACM 16 (1973) 372 (from memory); told by index, for two wires may join the
 * same terminals.
 */
export function loops(all: readonly Edge[]): readonly (readonly Edge[])[] {
  const at = new Map<string, number[]>()
  all.forEach(({ a, b }, i) => {
    for (const v of a === b ? [a] : [a, b]) (at.get(v) ?? at.set(v, []).get(v)!).push(i)
  })
  const depth = new Map<string, number>(),
    low = new Map<string, number>(),
    used = new Set<number>(),
    open: number[] = [],
    found: Edge[][] = []
  const visit = (v: string, d: number): void => {
    depth.set(v, d)
    low.set(v, d)
    for (const i of at.get(v) ?? []) {
      if (used.has(i)) continue
      used.add(i)
      const e = all[i] as Edge,
        w = e.a === v ? e.b : e.a
      const from = open.push(i) - 1,
        seen = depth.get(w)
      if (seen !== undefined) {
        low.set(v, Math.min(low.get(v)!, seen))
        continue
      }
      visit(w, d + 1)
      low.set(v, Math.min(low.get(v)!, low.get(w)!))
      if (low.get(w)! >= d) found.push(open.splice(from).map(k => all[k] as Edge))
    }
  }
  for (const v of at.keys()) if (!depth.has(v)) visit(v, 0)
  return found
}

/** What goes through a wire: the users whose current does, and whether it is only a part of it that does, other ways lying beside. */
export type Through = { readonly users: readonly string[]; readonly divides: boolean }

/** For each wire, the users whose current goes through it, every contactor closed but those of the precharge. */
export function usersThrough(circuit: Circuit): ReadonlyMap<string, Through> {
  const users = circuit.parts.filter(isUser).map(p => p.name),
    through = new Map(circuit.wires.map(w => [w.name, { users: [] as string[], divides: false }]))
  for (const user of users) {
    const closed = edges(circuit, p => isPrecharge(p) || (isUser(p) && p.name !== user)),
      loop = loops(closed).find(l => l.some(e => e.is === 'part' && e.name === user))
    if (!loop?.some(e => isBoxOf(circuit, e))) continue
    // One closed way has as many joints as pieces; with more pieces the current has a choice.
    const divides = loop.length > new Set(loop.flatMap(e => [e.a, e.b])).size
    for (const e of loop) {
      const entry = e.is === 'wire' ? through.get(e.name) : undefined
      if (!entry) continue
      entry.users.push(user)
      if (divides) entry.divides = true
    }
  }
  return through
}
const isPrecharge = (p: Part): boolean => p.kind === 'precharge resistor' || (p.kind === 'contactor' && p.role === 'precharge')
const isBoxOf = ({ parts }: Circuit, e: Edge): boolean => e.is === 'part' && parts.some(p => p.name === e.name && p.kind === 'battery box')

/** Wires that a part takes current round, all users shorted, once the fuses are out that melt before the wire suffers: nothing guards them. */
export function unguarded(circuit: Circuit, melts: (fuse: string, wire: string) => boolean): readonly string[] {
  return circuit.wires
    .filter(({ name }) => {
      const left = edges(circuit, p => isPrecharge(p) || (p.kind === 'fuse' && melts(p.name, name)))
      const loop = loops(left).find(l => l.some(e => e.is === 'wire' && e.name === name))
      return loop !== undefined && loop.length > 1 && loop.some(e => isBoxOf(circuit, e))
    })
    .map(w => w.name)
}

/** Whether a way through resistor and precharge contactor lies beside a main contactor: from one of its sides to the other. */
export function prechargeWay(circuit: Circuit): { readonly contactor: string; readonly resistor: string } | undefined {
  const ways = edges(circuit, p => !isPrecharge(p) && p.kind !== 'fuse' && p.kind !== 'bar')
  for (const main of circuit.parts.filter(p => p.kind === 'contactor' && p.role === 'main')) {
    const round: Edge = { is: 'part', name: main.name, a: `${main.name} in`, b: `${main.name} out` }
    for (const loop of loops([...ways, round])) {
      if (!loop.includes(round)) continue
      const kinds = loop.flatMap(e => circuit.parts.filter(p => e.is === 'part' && p.name === e.name))
      const resistor = kinds.find(p => p.kind === 'precharge resistor'),
        contactor = kinds.find(p => p.kind === 'contactor' && p.role === 'precharge')
      if (resistor && contactor) return { contactor: contactor.name, resistor: resistor.name }
    }
  }
  return undefined
}

/** Whether taking out the service disconnects leaves no way for a current through any user and the batteries. */
export function disconnectBreaks(circuit: Circuit): boolean {
  const left = loops(edges(circuit, p => p.kind === 'service disconnect'))
  return !left.some(l => l.some(e => isBoxOf(circuit, e)) && l.length > 1)
}
