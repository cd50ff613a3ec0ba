export * from './conversion.ts'
export * from './issue.ts'
export { type Migrated, migrate } from './migrations/migrate.ts'
export { nearest } from './nearest.ts'
export { readQuantity } from './quantities/read.ts'
export { displayUnit, type System, spellQuantity, writeQuantity } from './quantities/write.ts'
export {
  isTesterNumber,
  isTesterWord,
  type SalvageEdits,
  salvageEdits,
  type TableProblem,
  TESTER_HEADINGS,
  type TesterTable,
} from './salvage-table.ts'
export type { Fields, Group, Leaf, MapOf, Node, QuantityField, Variants } from './schema/field.ts'
export { fieldAt, isGroupAt, type KindAt } from './schema/field-at.ts'
export { jsonSchema } from './schema/json-schema.ts'
export type { FileDatum, LookUps, PartRecord } from './schema/look-ups.ts'
export { SECTIONS } from './sections/sections.ts'
export { applyChange, applyEdit, applyEdits, type Change, type Edit, type Now } from './text/edit.ts'
export { type Difference, editsBetween, type SeenEdit } from './text/edits-between.ts'
export { MAX_BYTES } from './text/limits.ts'
export { type Path, pathKeys, pathText } from './text/path.ts'
export { isSound, readText, type SoundReading, type TextReading } from './text/read.ts'
export { applySplice, invertSplice, type Splice } from './text/splice.ts'
export { holdsAlready, type Standing, standingAt, stands } from './text/standing.ts'
export { entryAt, type Group as TextGroup, type TextNode, type TextTree } from './text/tree.ts'
export type { Reserved, ShelfPiece, ShelfPrice } from './workshop/piece.ts'
export { type Holder, holderOf, isSameCar, type ShelfCar } from './workshop/reservation.ts'
export { WORKSHOP_SECTIONS } from './workshop/sections.ts'
export { EMPTY_WORKSHOP, isReadable, readWorkshop, WORKSHOP_SCHEMA, type Workshop } from './workshop/workshop.ts'
