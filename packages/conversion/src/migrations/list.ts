import type { Migration } from './migration.ts'

/** The schema version this program reads and writes. */
export const CURRENT_SCHEMA = 1

/** All migrations, oldest first, without gaps, up to the current schema. The first published schema needs none. */
export const MIGRATIONS: readonly Migration[] = []
