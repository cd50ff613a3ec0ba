import { createWriteStream, existsSync, renameSync, statSync } from 'node:fs'
import { join } from 'node:path'

const MOST = 5_000_000

/** The log in the data folder: one JSON object a line. The one before it is kept when it grows past 5 MB. What cannot be logged is let go. */
export function logFile(folder: string): { write(line: string): void; close(): void } {
  const file = join(folder, 'ampwright.log')
  try {
    if (existsSync(file) && statSync(file).size > MOST) renameSync(file, `${file}.1`)
  } catch {
    // It grows on.
  }
  const stream = createWriteStream(file, { flags: 'a', mode: 0o600 })
  stream.on('error', () => {})
  return { write: line => void stream.write(line), close: () => void stream.end() }
}
