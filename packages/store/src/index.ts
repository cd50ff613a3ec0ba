export { type Bundle, MOST_BUNDLE, unbundled } from './bundle.ts'
export type { Head, Summary, Variant } from './conversions.ts'
export { dataFolder } from './data-folder.ts'
export { type FaultKind, StoreFault } from './fault.ts'
export type { FileDifference } from './file-lists.ts'
export type { Clash } from './merge.ts'
export { isFileName, slugOf } from './names.ts'
export type { Files, Revision, RevisionKind, RevisionLine } from './revisions.ts'
export {
  type Change,
  type Imported,
  type Judge,
  type Judged,
  type Outcome,
  openStore,
  type Saved,
  type Store,
  type StoreOptions,
} from './store.ts'
