/** One step of the database from a version to the next; versions count from 0, an empty file. */
export type Step = { readonly to: number; readonly says: string; readonly sql: string }

/** Marks a file as a database of Ampwright: «Ampw» as a number. */
export const APPLICATION = 0x416d7077

/**
 * What is recorded stays: triggers abort every change of it, whoever asks. Only what was deleted thirty days ago may be taken out, and only
 * after that was written into `purge`, which checks it.
 */
const FIRST = `
CREATE TABLE content (hash TEXT PRIMARY KEY, size INTEGER NOT NULL, packed INTEGER NOT NULL, bytes BLOB NOT NULL) STRICT;
CREATE TABLE conversion (
  id TEXT PRIMARY KEY, at INTEGER NOT NULL, variant_of TEXT, named TEXT, from_revision INTEGER
) STRICT, WITHOUT ROWID;
CREATE TABLE revision (
  conversion TEXT NOT NULL REFERENCES conversion (id), number INTEGER NOT NULL, at INTEGER NOT NULL,
  by TEXT NOT NULL, kind TEXT NOT NULL, what TEXT NOT NULL,
  text TEXT NOT NULL REFERENCES content (hash), files TEXT NOT NULL CHECK (json_valid(files)),
  PRIMARY KEY (conversion, number)
) STRICT, WITHOUT ROWID;
CREATE INDEX revision_text ON revision (text);
CREATE TABLE removal (
  n INTEGER PRIMARY KEY, conversion TEXT NOT NULL REFERENCES conversion (id), at INTEGER NOT NULL, deleted INTEGER NOT NULL
) STRICT;
CREATE INDEX removal_conversion ON removal (conversion, n);
CREATE TABLE purge (conversion TEXT PRIMARY KEY, at INTEGER NOT NULL) STRICT, WITHOUT ROWID;
CREATE TABLE copy (conversion TEXT PRIMARY KEY, folder TEXT NOT NULL UNIQUE) STRICT, WITHOUT ROWID;

CREATE TRIGGER content_stays BEFORE UPDATE ON content BEGIN SELECT RAISE(ABORT, 'content never changes'); END;
CREATE TRIGGER conversion_stays BEFORE UPDATE ON conversion BEGIN SELECT RAISE(ABORT, 'a conversion never changes'); END;
CREATE TRIGGER revision_stays BEFORE UPDATE ON revision BEGIN SELECT RAISE(ABORT, 'a revision never changes'); END;
CREATE TRIGGER removal_stays BEFORE UPDATE ON removal BEGIN SELECT RAISE(ABORT, 'a removal never changes'); END;
CREATE TRIGGER purge_stays BEFORE UPDATE ON purge BEGIN SELECT RAISE(ABORT, 'a purge never changes'); END;
CREATE TRIGGER purge_kept BEFORE DELETE ON purge BEGIN SELECT RAISE(ABORT, 'a purge is kept'); END;

CREATE TRIGGER content_once BEFORE INSERT ON content WHEN EXISTS (SELECT 1 FROM content WHERE hash = NEW.hash)
BEGIN SELECT RAISE(ABORT, 'content is kept once'); END;
CREATE TRIGGER conversion_once BEFORE INSERT ON conversion WHEN EXISTS (SELECT 1 FROM conversion WHERE id = NEW.id)
BEGIN SELECT RAISE(ABORT, 'a conversion is made once'); END;
CREATE TRIGGER removal_once BEFORE INSERT ON removal WHEN EXISTS (SELECT 1 FROM removal WHERE n = NEW.n)
BEGIN SELECT RAISE(ABORT, 'a removal never changes'); END;
CREATE TRIGGER purge_once BEFORE INSERT ON purge WHEN EXISTS (SELECT 1 FROM purge WHERE conversion = NEW.conversion)
BEGIN SELECT RAISE(ABORT, 'a purge is made once'); END;
CREATE TRIGGER revision_follows BEFORE INSERT ON revision
WHEN NEW.number <> (SELECT coalesce(max(number), 0) + 1 FROM revision WHERE conversion = NEW.conversion)
BEGIN SELECT RAISE(ABORT, 'a revision follows the one before it'); END;

CREATE TRIGGER purge_waits BEFORE INSERT ON purge
WHEN NOT EXISTS (
  SELECT 1 FROM removal WHERE n = (SELECT max(n) FROM removal WHERE conversion = NEW.conversion)
    AND deleted = 1 AND at <= NEW.at - 30 * 86400000
)
BEGIN SELECT RAISE(ABORT, 'only what was deleted thirty days ago is taken out'); END;

CREATE TRIGGER conversion_kept BEFORE DELETE ON conversion WHEN NOT EXISTS (SELECT 1 FROM purge WHERE conversion = OLD.id)
BEGIN SELECT RAISE(ABORT, 'a conversion is kept'); END;
CREATE TRIGGER revision_kept BEFORE DELETE ON revision WHEN NOT EXISTS (SELECT 1 FROM purge WHERE conversion = OLD.conversion)
BEGIN SELECT RAISE(ABORT, 'a revision is kept'); END;
CREATE TRIGGER removal_kept BEFORE DELETE ON removal WHEN NOT EXISTS (SELECT 1 FROM purge WHERE conversion = OLD.conversion)
BEGIN SELECT RAISE(ABORT, 'a removal is kept'); END;
CREATE TRIGGER content_kept BEFORE DELETE ON content
WHEN EXISTS (SELECT 1 FROM revision WHERE text = OLD.hash)
  OR EXISTS (SELECT 1 FROM revision, json_each(revision.files) WHERE json_each.value = OLD.hash)
BEGIN SELECT RAISE(ABORT, 'content in use is kept'); END;
`

/** The workshop's own file: one text, in revisions that stay. A text it needs is kept like that of a conversion. */
const SECOND = `
CREATE TABLE workshop_revision (
  number INTEGER PRIMARY KEY, at INTEGER NOT NULL, by TEXT NOT NULL, kind TEXT NOT NULL, what TEXT NOT NULL,
  text TEXT NOT NULL REFERENCES content (hash)
) STRICT;
CREATE INDEX workshop_revision_text ON workshop_revision (text);

CREATE TRIGGER workshop_revision_stays BEFORE UPDATE ON workshop_revision
BEGIN SELECT RAISE(ABORT, 'a revision of the workshop never changes'); END;
CREATE TRIGGER workshop_revision_kept BEFORE DELETE ON workshop_revision
BEGIN SELECT RAISE(ABORT, 'a revision of the workshop is kept'); END;
CREATE TRIGGER workshop_revision_follows BEFORE INSERT ON workshop_revision
WHEN NEW.number <> (SELECT coalesce(max(number), 0) + 1 FROM workshop_revision)
BEGIN SELECT RAISE(ABORT, 'a revision of the workshop follows the one before it'); END;

DROP TRIGGER content_kept;
CREATE TRIGGER content_kept BEFORE DELETE ON content
WHEN EXISTS (SELECT 1 FROM revision WHERE text = OLD.hash)
  OR EXISTS (SELECT 1 FROM revision, json_each(revision.files) WHERE json_each.value = OLD.hash)
  OR EXISTS (SELECT 1 FROM workshop_revision WHERE text = OLD.hash)
BEGIN SELECT RAISE(ABORT, 'content in use is kept'); END;
`

export const STEPS: readonly Step[] = [
  { to: 1, says: 'conversions, revisions, contents', sql: FIRST },
  { to: 2, says: 'the workshop and its revisions', sql: SECOND },
]
