import type { Model } from '../../model/model.ts'
import type { Table } from '../../studies/study.ts'
import { isGap } from '../../working/value.ts'
import { KEYS, type Key, VARIANTS, type Variant } from '../sets/keys.ts'
import type { Requirement, SetId } from '../sets/requirement.ts'
import { type Limit, limitsFor } from '../sets/sets.ts'
import { WORKS } from '../sets/works.ts'

const COLUMNS: Table['columns'] = [
  { key: 'asks', label: 'about' },
  { key: 'test', label: 'how it is used' },
  { key: 'value', label: 'what it says' },
  { key: 'low', label: 'at least' },
  { key: 'high', label: 'at most' },
  { key: 'unit', label: 'unit' },
  { key: 'for', label: 'for' },
  { key: 'work', label: 'text' },
  { key: 'clause', label: 'clause' },
  { key: 'date', label: 'state of the text' },
  { key: 'read', label: 'how it was read' },
  { key: 'from', label: 'rule set' },
  { key: 'onlyWhen', label: 'only in the case of' },
  { key: 'remark', label: 'remark' },
]

/**
 * What has to be known before the first part is bought: every row of the chosen rule set that belongs to that gate, its base and, where both are
 * silent, common practice. No table while the brief names no set.
 */
export function requirements({ brief: { rules } }: Model): readonly Table[] {
  if (isGap(rules)) return []
  const set = rules.value as SetId,
    before = tables.get(set)
  if (before) return before
  const now = tablesOf(set)
  tables.set(set, now)
  return now
}
/** The sets are data: a table is made once for each. */
const tables = new Map<SetId, readonly Table[]>()
function tablesOf(set: SetId): readonly Table[] {
  const limits = limitsFor(set)
  const rows = KEYS.filter(({ gate }) => gate === 'B').flatMap(({ key, meaning }) =>
    [undefined, ...(Object.keys(VARIANTS) as Variant[])].flatMap(variant => {
      const limit = limits(key, variant)
      return limit && limit.requirement.variant === variant ? [{ name: nameOf(key, variant), cells: cellsOf(limit, meaning, variant) }] : []
    }),
  )
  return [{ id: 'brief.requirements', label: 'Asked before the first part is bought', columns: COLUMNS, rows }]
}

const nameOf = (key: Key, variant: Variant | undefined): string => (variant === undefined ? key : `${key}@${variant}`)

type Cells = Table['rows'][number]['cells']

function cellsOf({ requirement: r, from, onlyWhen }: Limit, meaning: string, variant: Variant | undefined): Cells {
  const optional = { for: r.for, clause: r.clause, date: r.date, onlyWhen, remark: r.remark }
  return {
    asks: variant === undefined ? meaning : `${meaning} (${VARIANTS[variant]})`,
    test: r.test,
    ...valueOf(r),
    ...(r.unit === '' ? {} : { unit: r.unit }),
    work: [r.work, ...(r.via ?? [])].map(id => WORKS[id].title).join('; as read in '),
    read: r.read,
    from,
    ...Object.fromEntries(Object.entries(optional).filter(([, text]) => text !== undefined)),
  }
}

/** A single figure without a side, such as a fee, is a value; a band has its ends. */
function valueOf({ test, value }: Requirement): Cells {
  if (value === true) return { value: 'yes' }
  if (typeof value === 'string') return { value }
  if (typeof value === 'number') return test === 'min' ? { low: value } : test === 'fact' ? { low: value, high: value } : { high: value }
  const [low, high] = value
  return typeof low === 'number' && typeof high === 'number' ? { low, high } : { value: value.join('; ') }
}
