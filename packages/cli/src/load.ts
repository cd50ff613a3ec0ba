import { closeSync, fstatSync, openSync, readFileSync, readSync } from 'node:fs'
import { dirname } from 'node:path'
import { type Conversion, formatIssue, isUsable, type LookUps, MAX_BYTES, readConversion } from '@ampwright/conversion'
import { lookUps, Refusal } from '@ampwright/workbench'
import { attachmentsIn } from './attachments.ts'

/** What a conversion may look up: the catalogue, and files beside it in its folder (none where it came over standard input). */
export const lookUpsBeside = (folder: string | undefined): LookUps => lookUps(folder === undefined ? undefined : attachmentsIn(folder))

/** Bytes of a file, or of standard input for `-`. Refuses what is too large before reading it all. */
export function bytesOf(file: string, wanted = 'a conversion file such as samples/lapwing.conversion.yaml', most = MAX_BYTES): Uint8Array {
  if (file === '-') return standardInput(most)
  let fd: number
  try {
    fd = openSync(file, 'r')
  } catch (e) {
    throw new Refusal(`${file}: cannot be opened (${(e as NodeJS.ErrnoException).code ?? 'unknown reason'}); ${wanted} is wanted`)
  }
  try {
    const stat = fstatSync(fd)
    if (stat.isDirectory()) throw new Refusal(`${file}: is a folder; ${wanted} is wanted`)
    if (stat.size > most) throw new Refusal(`${file}: ${stat.size} bytes; at most ${most} bytes are read`)
    return readFileSync(fd)
  } finally {
    closeSync(fd)
  }
}

function standardInput(most: number): Uint8Array {
  const parts: Buffer[] = []
  let size = 0
  for (;;) {
    const part = Buffer.alloc(65_536)
    let n: number
    try {
      n = readSync(0, part, 0, part.length, null)
    } catch (e) {
      if ((e as NodeJS.ErrnoException).code === 'EAGAIN') continue
      if ((e as NodeJS.ErrnoException).code === 'EOF') break
      throw new Refusal(`standard input: cannot be read (${(e as NodeJS.ErrnoException).code ?? 'unknown reason'})`)
    }
    if (n === 0) break
    size += n
    if (size > most) throw new Refusal(`standard input: more than ${most} bytes; at most that is read`)
    parts.push(part.subarray(0, n))
  }
  return Buffer.concat(parts)
}

/** Reads a conversion; every problem of the file goes into one refusal. */
export const load = (file: string, strict: boolean): Conversion => loadText(bytesOf(file), file, strict)

/** The same for a text that is already here; `file` names it in messages and says where files beside it are, `left` what a refusal leaves as it was. */
export function loadText(text: Uint8Array | string, file: string, strict: boolean, left = 'nothing was assessed'): Conversion {
  const name = file === '-' ? '<standard input>' : file
  const conversion = readConversion(text, { file: name, strict, lookUps: lookUpsBeside(file === '-' ? undefined : dirname(file)) })
  if (!isUsable(conversion)) {
    const lines = conversion.issues.map(formatIssue)
    throw new Refusal(`${lines.join('\n')}\n${lines.length === 1 ? 'One problem' : `${lines.length} problems`} in ${name}; ${left}.`)
  }
  return conversion
}
