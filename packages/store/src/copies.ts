import { existsSync, mkdirSync, readFileSync, renameSync, rmdirSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { bytesOf, hashOf } from './contents.ts'
import { type Head, headOf } from './conversions.ts'
import type { Db } from './database.ts'
import { slugOf } from './names.ts'

export const COPIES = 'conversions'
export const WORKSHOP_COPY = 'own.workshop.yaml'
const textFile = (folder: string): string => `${folder}.conversion.yaml`

/**
 * Renews the copy of a conversion beside the database: its text and its files in a folder of its own, each file whole or not at all. Nothing
 * is lost by it: a text somebody changed there by hand is moved aside first. Of a deleted conversion no copy is left.
 */
export function renewCopy(db: Db, data: string, id: string): void {
  const head = headOf(db, id),
    had = db.prepare('SELECT folder FROM copy WHERE conversion = ?').pluck().get(id) as string | undefined
  if (head.deletedUntil !== null) return had === undefined ? undefined : dropCopy(db, data, id, had)
  const folder = folderFor(db, head, had)
  if (had !== undefined && had !== folder) dropCopy(db, data, id, had)
  if (had !== folder) db.prepare('INSERT INTO copy (conversion, folder) VALUES (?, ?)').run(id, folder)
  const place = join(data, COPIES, folder)
  mkdirSync(place, { recursive: true })
  for (const [name, hash] of Object.entries(head.files)) {
    const file = join(place, name)
    if (existsSync(file) && hashOf(readFileSync(file)) === hash) continue
    mkdirSync(dirname(file), { recursive: true })
    replaceWhole(file, bytesOf(db, hash))
  }
  putText(db, join(place, textFile(folder)), head)
}

/** Renews the copy of the workshop's own file, beside the folders of the conversions. */
export function renewWorkshopCopy(db: Db, data: string, text: string): void {
  mkdirSync(join(data, COPIES), { recursive: true })
  putText(db, join(data, COPIES, WORKSHOP_COPY), { text, hash: hashOf(Buffer.from(text, 'utf8')) })
}

function putText(db: Db, file: string, head: Pick<Head, 'text' | 'hash'>): void {
  if (existsSync(file)) {
    const stands = readFileSync(file),
      hash = hashOf(stands)
    if (hash === head.hash) return
    setAside(db, file, hash)
  }
  replaceWhole(file, Buffer.from(head.text, 'utf8'))
}

/** What the store knows may go; anything else was written by somebody. */
function setAside(db: Db, file: string, hash: string): void {
  if (db.prepare('SELECT 1 FROM content WHERE hash = ?').get(hash)) return
  for (let n = 1; ; n++) {
    const aside = file.replace(/(\.\w+\.yaml)$/, `.changed-by-hand-${n}$1`)
    if (existsSync(aside)) continue
    renameSync(file, aside)
    return
  }
}

/** The folder it has, where its name still fits; else the first free one of that name. */
function folderFor(db: Db, { name, variant }: Head, had: string | undefined): string {
  const wanted = slugOf(variant ? `${name} ${variant.named}` : name)
  if (had !== undefined && (had === wanted || /^-\d+$/.test(had.slice(wanted.length))) && had.startsWith(wanted)) return had
  for (let n = 1; ; n++) {
    const folder = n === 1 ? wanted : `${wanted}-${n}`
    if (!db.prepare('SELECT 1 FROM copy WHERE folder = ?').get(folder)) return folder
  }
}

function dropCopy(db: Db, data: string, id: string, folder: string): void {
  const place = join(data, COPIES, folder),
    file = join(place, textFile(folder))
  if (existsSync(file)) {
    setAside(db, file, hashOf(readFileSync(file)))
    rmSync(file, { force: true })
  }
  for (const name of knownFiles(db, id)) {
    const beside = join(place, name)
    if (existsSync(beside) && statSync(beside).isFile() && isKnown(db, beside)) rmSync(beside)
    if (dirname(name) !== '.') removeEmpty(dirname(beside))
  }
  removeEmpty(place)
  db.prepare('DELETE FROM copy WHERE conversion = ?').run(id)
}

const isKnown = (db: Db, file: string): boolean =>
  db.prepare('SELECT 1 FROM content WHERE hash = ?').get(hashOf(readFileSync(file))) !== undefined
const knownFiles = (db: Db, id: string): readonly string[] =>
  db.prepare('SELECT DISTINCT json_each.key FROM revision, json_each(revision.files) WHERE conversion = ?').pluck().all(id) as string[]

function removeEmpty(folder: string): void {
  try {
    rmdirSync(folder)
  } catch {
    // Something else lies in it: it stays.
  }
}

function replaceWhole(file: string, bytes: Uint8Array): void {
  const beside = `${file}.writing`
  try {
    writeFileSync(beside, bytes)
    renameSync(beside, file)
  } catch (e) {
    rmSync(beside, { force: true })
    throw e
  }
}
