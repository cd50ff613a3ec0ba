import { createHash } from 'node:crypto'
import { deflateRawSync, inflateRawSync } from 'node:zlib'
import type { Db } from './database.ts'
import { StoreFault } from './fault.ts'

export const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

/** Keeps bytes under their own hash, once. */
export function keep(db: Db, bytes: Uint8Array): string {
  const hash = hashOf(bytes)
  if (db.prepare('SELECT 1 FROM content WHERE hash = ?').get(hash)) return hash
  const packed = deflateRawSync(bytes),
    isWorthIt = packed.length < 0.9 * bytes.length
  db.prepare('INSERT INTO content (hash, size, packed, bytes) VALUES (?, ?, ?, ?)').run(
    hash,
    bytes.length,
    isWorthIt ? 1 : 0,
    isWorthIt ? packed : Buffer.from(bytes),
  )
  return hash
}

export const keepText = (db: Db, text: string): string => keep(db, Buffer.from(text, 'utf8'))

/** The bytes of a hash. They are hashed again: what does not come back as it went in is said, never handed out. */
export function bytesOf(db: Db, hash: string): Buffer {
  const row = db.prepare('SELECT size, packed, bytes FROM content WHERE hash = ?').get(hash) as
    | { size: number; packed: number; bytes: Buffer }
    | undefined
  if (row) {
    const bytes = row.packed ? inflated(row.bytes, row.size) : row.bytes
    if (bytes && hashOf(bytes) === hash) return bytes
  }
  throw new StoreFault(
    'damaged',
    'What was kept here does not come back as it went in: the database is damaged. Put a backup in its place.',
  )
}

function inflated(bytes: Buffer, size: number): Buffer | undefined {
  try {
    return inflateRawSync(bytes, { maxOutputLength: Math.max(1, size) })
  } catch {
    return undefined
  }
}

export const textOf = (db: Db, hash: string): string => bytesOf(db, hash).toString('utf8')

export const sizeOf = (db: Db, hash: string): number =>
  (db.prepare('SELECT size FROM content WHERE hash = ?').pluck().get(hash) as number) ?? 0
