/** Why the store cannot do what it was asked: one sentence for the person, and a word for the program. */
export type FaultKind =
  | 'unknown'
  | 'deleted'
  | 'name'
  | 'size'
  | 'content'
  | 'full'
  | 'read-only'
  | 'in use'
  | 'newer'
  | 'damaged'
  | 'runtime'

/** Wrong use, or a place that does not do what it should: one message, never a stack trace. */
export class StoreFault extends Error {
  readonly kind: FaultKind
  constructor(kind: FaultKind, message: string) {
    super(message)
    this.kind = kind
  }
}

const codeOf = (e: unknown): string => (typeof e === 'object' && e !== null && 'code' in e ? String(e.code) : '')

/** What the database or the file system complains of, said so that something can be done about it; other errors as they are. */
export function asFault(e: unknown, folder: string): unknown {
  if (e instanceof StoreFault) return e
  const code = codeOf(e)
  if (/^(SQLITE_FULL|ENOSPC|EDQUOT)/.test(code))
    return new StoreFault('full', `The disk is full: nothing was saved. Make room where ${folder} is and try again.`)
  if (/^(SQLITE_READONLY|SQLITE_CANTOPEN|SQLITE_PERM|SQLITE_IOERR_LOCK|EACCES|EPERM|EROFS)/.test(code))
    return new StoreFault(
      'read-only',
      `${folder} cannot be written to: nothing was saved. Allow writing there, or choose another folder with --data DIR.`,
    )
  if (/^(ENOTDIR|EEXIST|ENOENT|ELOOP|ENAMETOOLONG)/.test(code))
    return new StoreFault('read-only', `${folder} cannot be used as data folder (${code}). Choose another with --data DIR.`)
  if (/^SQLITE_(BUSY|LOCKED)/.test(code))
    return new StoreFault(
      'in use',
      `${folder} is in use by another Ampwright. Use that one, stop it, or choose another folder with --data DIR.`,
    )
  if (/^SQLITE_(CORRUPT|NOTADB)/.test(code)) return damaged(folder)
  if (code.startsWith('SQLITE_IOERR'))
    return new StoreFault('full', `The disk does not take or give what it should (${code}): nothing was saved.`)
  if (code === 'ERR_DLOPEN_FAILED')
    return new StoreFault(
      'runtime',
      'The database module was built for another version of Node.js: run `npm ci` with the version you use now.',
    )
  return e
}

export const damaged = (folder: string): StoreFault =>
  new StoreFault(
    'damaged',
    `The database in ${folder} is damaged. Nothing was changed. Put a backup in its place, or choose another folder with --data DIR; the texts of the conversions are in its folder «conversions».`,
  )

/** Does something; what goes wrong at the database or the disk becomes one clear message. */
export function guarded<T>(folder: string, work: () => T): T {
  try {
    return work()
  } catch (e) {
    throw asFault(e, folder)
  }
}
