import { crc32, deflateRawSync, inflateRawSync } from 'node:zlib'
import { StoreFault } from './fault.ts'

export type Packed = { readonly name: string; readonly bytes: Uint8Array }

const LOCAL = 0x04034b50,
  CENTRAL = 0x02014b50,
  END = 0x06054b50
/** Names in UTF-8. */
const UTF8 = 0x0800
/** 1 January 1980, the first day the format knows: the same content gives the same bytes. */
const DATE = 0x21

/** A plain zip file: entries deflated where that helps. Format: APPNOTE.TXT of the zip format, 4.3 and 4.4 (from memory). */
export function zip(entries: readonly Packed[]): Buffer {
  const parts: Buffer[] = [],
    directory: Buffer[] = []
  let at = 0
  for (const { name, bytes } of entries) {
    const said = Buffer.from(name, 'utf8'),
      deflated = deflateRawSync(bytes),
      isDeflated = deflated.length < bytes.length,
      data = isDeflated ? deflated : Buffer.from(bytes)
    const common = Buffer.alloc(26)
    common.writeUInt16LE(20, 0)
    common.writeUInt16LE(UTF8, 2)
    common.writeUInt16LE(isDeflated ? 8 : 0, 4)
    common.writeUInt16LE(DATE, 8)
    common.writeUInt32LE(crc32(bytes), 10)
    common.writeUInt32LE(data.length, 14)
    common.writeUInt32LE(bytes.length, 18)
    common.writeUInt16LE(said.length, 22)
    const tail = Buffer.alloc(14)
    tail.writeUInt32LE(at, 10)
    parts.push(word(LOCAL), common, said, data)
    directory.push(word(CENTRAL), Buffer.from([20, 0]), common, tail, said)
    at += 30 + said.length + data.length
  }
  const list = Buffer.concat(directory),
    end = Buffer.alloc(18)
  end.writeUInt16LE(entries.length, 4)
  end.writeUInt16LE(entries.length, 6)
  end.writeUInt32LE(list.length, 8)
  end.writeUInt32LE(at, 12)
  return Buffer.concat([...parts, list, word(END), end])
}

const word = (n: number): Buffer => {
  const b = Buffer.alloc(4)
  b.writeUInt32LE(n)
  return b
}

const refuse = (what: string): never => {
  throw new StoreFault('content', `This is no bundle that can be read: ${what}. Accepted: a zip file as the export makes it.`)
}

/** The entries of a zip file, in order. Refuses what is torn, encrypted, split, or unpacks to more than `most` bytes; folders are left out. */
export function unzip(file: Buffer, most: number, mostEntries = 1000): readonly Packed[] {
  const end = file.subarray(Math.max(0, file.length - 65_557)).lastIndexOf(word(END)),
    at = end + Math.max(0, file.length - 65_557)
  if (end < 0 || at + 22 > file.length) return refuse('it does not end as a zip file does')
  const count = file.readUInt16LE(at + 10)
  if (count > mostEntries) return refuse(`it has ${count} entries, more than ${mostEntries}`)
  const out: Packed[] = []
  let place = file.readUInt32LE(at + 16),
    left = most
  for (let i = 0; i < count; i++) {
    if (place + 46 > file.length || file.readUInt32LE(place) !== CENTRAL) return refuse('its list of contents is torn')
    const nameLength = file.readUInt16LE(place + 28),
      name = file.toString('utf8', place + 46, place + 46 + nameLength)
    if (!name.endsWith('/')) {
      const bytes = entryAt(file, place, left)
      left -= bytes.length
      out.push({ name, bytes })
    }
    place += 46 + nameLength + file.readUInt16LE(place + 30) + file.readUInt16LE(place + 32)
  }
  return out
}

function entryAt(file: Buffer, place: number, most: number): Buffer {
  const flags = file.readUInt16LE(place + 8),
    method = file.readUInt16LE(place + 10),
    sum = file.readUInt32LE(place + 16),
    packed = file.readUInt32LE(place + 20),
    size = file.readUInt32LE(place + 24),
    local = file.readUInt32LE(place + 42)
  if (flags & 1) return refuse('it is encrypted')
  if (size > most) return refuse('it unpacks to too much')
  if (local + 30 > file.length || file.readUInt32LE(local) !== LOCAL) return refuse('an entry is torn')
  const from = local + 30 + file.readUInt16LE(local + 26) + file.readUInt16LE(local + 28)
  if (from + packed > file.length) return refuse('an entry is torn')
  const bytes = unpacked(file.subarray(from, from + packed), method, size)
  if (bytes.length !== size || crc32(bytes) !== sum) return refuse('an entry does not unpack to what it says')
  return bytes
}

function unpacked(data: Buffer, method: number, size: number): Buffer {
  if (method === 0) return data
  if (method !== 8) return refuse('it is packed in a way this does not know')
  try {
    return inflateRawSync(data, { maxOutputLength: Math.max(1, size) })
  } catch {
    return refuse('an entry is torn')
  }
}
