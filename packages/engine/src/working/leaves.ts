import { type AnyValue, type Fact, isFigure, type Value } from './value.ts'

/** Values never change once made, so what one rests on is looked for once. */
const known = new WeakMap<AnyValue, readonly Fact[]>()

/** All facts a value rests on, each once, in the order a reader meets them. */
export function leaves(value: AnyValue): readonly Fact[] {
  const before = known.get(value)
  if (before) return before
  const all = lookedFor(value)
  known.set(value, all)
  return all
}

function lookedFor(value: AnyValue): readonly Fact[] {
  const found = new Map<string, Fact>(),
    seen = new Set<AnyValue>(),
    open: AnyValue[] = [value]
  for (let v = open.pop(); v; v = open.pop()) {
    if (seen.has(v)) continue
    seen.add(v)
    if (!isFigure(v)) found.set((v as Fact).path, v as Fact)
    else
      for (const input of Object.values((v as Value & { because: { inputs: object } }).because.inputs).reverse())
        open.push(...(Array.isArray(input) ? input : [input]))
  }
  return [...found.values()]
}

const assumed = new WeakMap<AnyValue, readonly Fact[]>()
/** The assumed facts a value rests on. */
export function assumptions(value: AnyValue): readonly Fact[] {
  const before = assumed.get(value)
  if (before) return before
  const all = leaves(value).filter(f => f.origin?.how === 'assumed')
  assumed.set(value, all)
  return all
}
