import type { ModuleRecord, Pack } from '../../model/pack.ts'
import { type Field, isGap } from '../../working/value.ts'

/** Records of modules that go into the pack, by name; spares and rejected ones stay on the shelf. */
export const recordsInPack = (pack: Pack): readonly (readonly [name: string, record: ModuleRecord])[] =>
  Object.entries(pack.salvage).filter(([, r]) => isGap(r.use) || r.use.value === 'in the pack')

/** What is known of one module: measured, or how an untested one is planned. */
export type Tested = { readonly name: string; readonly measured: Field } | { readonly name: string; readonly against: Field }
export const tested = (records: readonly (readonly [string, ModuleRecord])[], key: 'capacity' | 'resistance'): readonly Tested[] =>
  records.map(([name, r]) => (isGap(r[key]) ? { name, against: r.againstOthers } : { name, measured: r[key] }))
