/** The fields of a piece, by their keys in the workshop file, in the order of the form. */
export type PieceField = {
  readonly key: string
  readonly label: string
  readonly hint?: string
  readonly oneOf?: readonly string[]
}

export const FIELDS: readonly PieceField[] = [
  { key: 'part', label: 'Record of the catalogue', hint: 'motor-pm-100kw@1' },
  { key: 'what', label: 'Or what it is, in your words', hint: 'coupler hub, 25 mm bore' },
  { key: 'serial', label: 'Serial number' },
  { key: 'pieces', label: 'Number of pieces', hint: '1' },
  { key: 'price', label: 'Price of one piece', hint: '240 €' },
  { key: 'price-is', label: 'That price is', oneOf: ['paid', 'quoted'] },
  { key: 'priced-on', label: 'Paid or quoted on', hint: '2026-05-22' },
  { key: 'from', label: 'Sold or quoted by' },
  { key: 'quote-until', label: 'The quote holds until', hint: '2026-12-31' },
  { key: 'place', label: 'Where it lies' },
  { key: 'condition', label: 'Condition' },
  { key: 'note', label: 'Note' },
]

export type Typed = Readonly<Record<string, string>>
/** A form: what was seen in the piece, and what is typed. */
export type Filled = { readonly seen: Typed; readonly values: Typed }

const same = (a: Typed, b: Typed, key: string): boolean => (a[key] ?? '') === (b[key] ?? '').trim()
const taken = (of: Typed, key: string): Typed => (of[key] === undefined ? {} : { [key]: of[key] })

/** The form after somebody else changed the piece: what nobody typed here follows, what was typed stays and is held against what was seen. */
export function followed({ seen, values }: Filled, now: Typed): Filled {
  const own = FIELDS.map(f => f.key).filter(key => !same(seen, values, key)),
    pick = (of: Typed): Typed => Object.fromEntries(FIELDS.flatMap(f => Object.entries(taken(own.includes(f.key) ? of : now, f.key))))
  return { seen: pick(seen), values: pick(values) }
}
/** The form after both values were shown: what others put there counts as seen. */
export const settled = ({ seen, values }: Filled, now: Typed, keys: readonly string[]): Filled => ({
  seen: Object.fromEntries(FIELDS.flatMap(f => Object.entries(taken(keys.includes(f.key) ? now : seen, f.key)))),
  values,
})

/** Edits that make of a piece what was typed: only values that differ from what was seen, each with that. */
export const changesOf = (key: string, { seen, values }: Filled) =>
  FIELDS.flatMap(f => {
    const now = (values[f.key] ?? '').trim()
    return same(seen, values, f.key) ? [] : [{ path: ['shelf', key, f.key], was: seen[f.key] ?? null, now: now === '' ? null : now }]
  })

/** The edit that puts a new piece on the shelf, in one line. */
export const addition = (key: string, typed: Typed) => [
  {
    path: ['shelf', key],
    was: null,
    now: Object.fromEntries(FIELDS.flatMap(f => ((typed[f.key] ?? '').trim() === '' ? [] : [[f.key, (typed[f.key] ?? '').trim()]]))),
  },
]
