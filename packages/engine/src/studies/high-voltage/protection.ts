import { highestShort } from '../../battery/highest-short.ts'
import { fuseForEver } from '../../high-voltage/bus-sums.ts'
import { unguarded } from '../../high-voltage/circuit.ts'
import type { Model } from '../../model/model.ts'
import type { Field, Figure, Gap, Value } from '../../working/value.ts'
import { packModel } from '../pack/pack-model.ts'
import { from, type Gaps, isGaps, type Maker, maybe, once, study } from '../study.ts'
import { type CircuitAnswer, circuit, partsOf } from './circuit.ts'
import { type WireFigures, wires } from './wires.ts'

export type Protection = {
  readonly full: Value | Gaps
  /** Highest current a short can draw. */
  readonly highest: Figure | Gaps
  /** By part that is passed through: the current for hours of the wires at its ends, the largest; what it carries for ever. */
  readonly through: Readonly<
    Record<string, { readonly kind: string; readonly current: Value | Gaps | null; readonly carries: Value | Gaps }>
  >
  /** Wires in which more can flow for hours than they carry, with no fuse that melts first. */
  readonly unguarded: readonly string[] | Gaps
  readonly rests: readonly Value[]
}

/** Whether a fuse stands before whatever can be hurt, and what a short can draw. */
export const protection = study({
  id: 'protection',
  stage: 'high voltage',
  asks: 'Does a fuse melt before a wire suffers, and can it break what a short draws?',
  reads: (m, ask) => ({
    pack: maybe({ full: from(ask(packModel), p => p.highestVoltage), cells: from(ask(packModel), p => p.cells) }),
    shape: maybe({ is: from(ask(circuit), c => c) }),
    wires: maybe({ of: from(ask(wires), w => w) }),
    parts: passedThrough(m).map(([name, kind, rating, voltage, breaks]) => ({
      name,
      kind,
      rating: maybe(rating),
      voltage: maybe(voltage),
      breaks: breaks === null ? null : maybe(breaks),
    })),
  }),
  answer: ({ pack, shape, wires, parts }, make): Protection => {
    const figures = isGaps(wires) ? undefined : (wires.of as Readonly<Record<string, WireFigures>>),
      told = isGaps(shape) ? undefined : (shape.is as CircuitAnswer),
      shapeless: Gaps | undefined = isGaps(shape) ? shape : told && told.untold.length > 0 ? { gaps: told.untold } : undefined
    const through = Object.fromEntries(
      parts.map(({ name, kind, rating }) => {
        const ends = told?.circuit.wires.filter(w => w.from.part === name || w.to.part === name) ?? [],
          met = ends.flatMap(w => figures?.[w.name] ?? []),
          currents = met.flatMap(w => w.current ?? []),
          missing = currents.flatMap(c => (isGaps(c) ? c.gaps : []))
        const current = ((): Value | Gaps | null => {
          if (shapeless) return shapeless
          if (missing.length > 0) return { gaps: once(missing) }
          if (met.length === 0) return { gaps: [notJoined(name)] }
          return currents.length === 0 ? null : (currents as readonly Value[]).reduce((a, b) => (b.value > a.value ? b : a))
        })()
        const stated = rating as Value | Gaps
        const carries: Value | Gaps =
          kind === 'fuse' && !isGaps(stated)
            ? make.work('for-ever', fuseForEver, { rating: stated }, { item: name, label: `Current fuse ${name} carries for ever` })
            : stated
        return [name, { kind, current, carries }]
      }),
    )
    const cell = (v: unknown): Value | undefined => (v === null || isGaps(v) ? undefined : (v as Value))
    make.table('list', {
      label: 'Fuses, contactors and disconnects',
      columns: [
        { key: 'kind', label: 'part' },
        { key: 'rating', label: 'rated', unit: 'A' },
        { key: 'voltage', label: 'breaks, direct', unit: 'V' },
        { key: 'breaks', label: 'breaks at most', unit: 'A' },
        { key: 'current', label: 'through it for hours', unit: 'A' },
        { key: 'carries', label: 'carries for ever', unit: 'A' },
      ],
      rows: parts.map(({ name, kind, rating, voltage, breaks }) => {
        const at = through[name] as Protection['through'][string]
        return {
          name,
          cells: {
            kind,
            rating: cell(rating),
            voltage: cell(voltage),
            breaks: cell(breaks),
            current: at.current === null ? 'moments' : cell(at.current),
            carries: cell(at.carries),
          },
        }
      }),
    })
    const fuses = parts.filter(p => p.kind === 'fuse')
    const unknown = [
      ...fuses.flatMap(f => (isGaps(f.rating) ? f.rating.gaps : [])),
      ...Object.values(figures ?? {}).flatMap(w => (isGaps(w.carries) ? w.carries.gaps : [])),
      ...(isGaps(wires) ? wires.gaps : []),
      ...(shapeless?.gaps ?? []),
    ]
    const ratings = new Map(fuses.flatMap(f => (isGaps(f.rating) ? [] : [[f.name, f.rating as Value] as const])))
    const carriedBy = (wire: string): Value | undefined => {
      const c = figures?.[wire]?.carries
      return c === undefined || isGaps(c) ? undefined : c
    }
    return {
      full: isGaps(pack) ? pack : (pack.full as Value),
      highest: isGaps(pack) ? pack : highestOf(make, pack.full as Value, pack.cells as Value),
      through,
      unguarded:
        unknown.length > 0
          ? { gaps: once(unknown) }
          : unguarded(told!.circuit, (fuse, wire) => ratings.get(fuse)!.value <= (carriedBy(wire)?.value ?? 0)),
      rests: [...ratings.values(), ...(told?.circuit.wires ?? []).flatMap(w => carriedBy(w.name) ?? [])],
    }
  },
})
type PassedThrough = readonly [
  name: string,
  kind: 'fuse' | 'contactor' | 'service disconnect',
  rating: Field,
  voltage: Field,
  breaks: Field | null,
]
/** Parts that are passed through and rated for a current, with what they are rated for. */
const passedThrough = (m: Model): readonly PassedThrough[] =>
  partsOf(m).flatMap(([name, p]): readonly PassedThrough[] => {
    if (p.kind === 'fuse') return [[name, p.kind, p.rating, p.voltage, p.breaks]]
    return p.kind === 'contactor' || p.kind === 'service disconnect' ? [[name, p.kind, p.current, p.voltage, null]] : []
  })
/** Without any ohmic resistance a short would have no bound: then what was stated of the cells cannot be so. */
const highestOf = (make: Maker, full: Value, cells: Value): Figure | Gaps =>
  cells.value > 0
    ? make.work('highest', highestShort, { full, cells }, { label: 'Highest current a short can draw' })
    : {
        gaps: [
          {
            gap: true,
            path: 'pack.module.branch-share',
            label: 'slow part of the resistance, less than the whole of it',
            until: 'any time',
          },
        ],
      }
const notJoined = (name: string): Gap => ({
  gap: true,
  path: `high-voltage.parts.${name}`,
  label: `a wire at each end of ${name}`,
  until: 'any time',
})
