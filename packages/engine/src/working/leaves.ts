import { type AnyValue, type Fact, isFigure, type Value } from './value.ts'

/** All facts a value rests on, each once, in the order a reader meets them. */
export function leaves(value: AnyValue): readonly Fact[] {
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

/** The assumed facts a value rests on. */
export const assumptions = (value: AnyValue): readonly Fact[] => leaves(value).filter(f => f.origin?.how === 'assumed')
