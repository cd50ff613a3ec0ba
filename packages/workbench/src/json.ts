import type { Conversion } from '@ampwright/conversion'
import {
  type AnyValue,
  type Assessment,
  assumptions,
  type Fact,
  type Figure,
  type Finding,
  type Gap,
  nameOf,
  type Table,
} from '@ampwright/engine'

const plainDatum = (v: unknown): unknown =>
  typeof v === 'object' && v !== null
    ? Object.fromEntries(Object.entries(v).map(([k, a]) => [k, [...(a as Float64Array)]]))
    : typeof v === 'number' && !Number.isFinite(v)
      ? String(v)
      : v
const names = (x: AnyValue | readonly AnyValue[]): string | string[] => (Array.isArray(x) ? x.map(nameOf) : nameOf(x as AnyValue))

function figureJson(f: Figure, half: number | undefined): object {
  const { because: b } = f
  const number = typeof f.value === 'number' && Number.isFinite(f.value)
  return {
    label: f.label,
    symbol: f.symbol,
    value: plainDatum(f.value),
    unit: f.unit,
    ...(f.shows ? { shows: f.shows } : {}),
    ...(number && half !== undefined ? { low: f.value - half, high: f.value + half } : {}),
    restsOnAssumptions: assumptions(f).map(a => a.path),
    because: {
      kind: b.read ? 'read from a trace' : 'worked',
      formula: b.formula.card.id,
      inputs: Object.fromEntries(Object.entries(b.inputs).map(([k, v]) => [k, { name: names(v) }])),
      ...(b.result ? { result: b.result } : {}),
      ...(b.read ? { read: b.read } : {}),
      ...(b.beyond.length ? { beyond: b.beyond } : {}),
    },
  }
}
const gapJson = (g: Gap): object => ({
  path: g.path,
  label: g.label,
  until: g.until,
  ...(g.measure ? { measure: g.measure } : {}),
  ...(g.why ? { why: g.why } : {}),
})

function findingJson(f: Finding): object {
  const value = (v: AnyValue | undefined): object | undefined => v && { name: nameOf(v), value: plainDatum(v.value), unit: v.unit }
  return {
    rule: f.rule,
    ...(f.item === undefined ? {} : { item: f.item }),
    title: f.title,
    stage: f.stage,
    harm: f.harm,
    outcome: f.outcome,
    says: f.says,
    slots: Object.fromEntries(
      Object.entries(f.slots)
        .filter(([, v]) => v)
        .map(([k, v]) => [k, value(v)]),
    ),
    ...(f.found ? { found: value(f.found) } : {}),
    ...(f.required ? { required: { side: f.required.side, ...value(f.required.limit) } } : {}),
    ...(f.half === undefined ? {} : { half: f.half }),
    ...(f.reason ? { reason: f.reason } : {}),
    gaps: f.gaps.map(gapJson),
    assumed: f.assumed,
    source: f.source,
    ...(f.requirement ? { requirement: f.requirement } : {}),
    remedies: f.remedies,
    ...(f.caution ? { caution: f.caution } : {}),
    about: f.about,
    rests: f.rests,
    ...(f.byHand ? { byHand: f.byHand } : {}),
    ...(f.lapsed ? { lapsed: true } : {}),
    ...(f.unheeded ? { unheeded: f.unheeded } : {}),
  }
}

/** A table: cells are values, plain numbers in the unit of their column, or words. */
export const tableJson = (t: Table): object => ({
  label: t.label,
  columns: t.columns,
  rows: t.rows.map(r => ({
    name: r.name,
    cells: Object.fromEntries(
      Object.entries(r.cells).map(([k, c]) => [
        k,
        c !== undefined && typeof c === 'object' ? { name: nameOf(c), value: plainDatum(c.value), unit: c.unit } : c,
      ]),
    ),
  })),
})

/** The documented JSON of an assessment: see docs/json.md. */
export function assessmentJson(conversion: Conversion, a: Assessment, traces: readonly string[] = []): object {
  const car = conversion.model.car
  return {
    conversion: 'value' in car ? car.value : '',
    headline: a.headline,
    figures: Object.fromEntries([...a.figures].map(([id, f]) => [id, figureJson(f, a.halves.get(id))])),
    facts: Object.fromEntries(
      (conversion.facts as readonly Fact[]).map(f => [
        f.path,
        {
          label: f.label,
          ...(f.text === undefined ? {} : { text: f.text }),
          value: plainDatum(f.value),
          unit: f.unit,
          ...(f.origin ? { origin: f.origin } : {}),
          ...(f.half === undefined ? {} : { spread: f.half }),
        },
      ]),
    ),
    tables: Object.fromEntries([...a.tables].map(([id, t]) => [id, tableJson(t)])),
    findings: a.findings.map(findingJson),
    gaps: a.gaps.map(g => ({ ...gapJson(g), unlocks: g.unlocks })),
    ...(traces.length
      ? {
          traces: Object.fromEntries(
            [...a.traces]
              .filter(([id]) => traces.includes(id))
              .map(([id, t]) => [
                id,
                {
                  label: t.label,
                  axis: { ...t.axis, values: [...t.axis.values] },
                  series: t.series.map(s => ({ ...s, values: [...s.values] })),
                },
              ]),
          ),
        }
      : {}),
  }
}
