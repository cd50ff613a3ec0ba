import { MAX_BYTES } from '@ampwright/conversion'
import { hashOf } from './contents.ts'
import { StoreFault } from './fault.ts'
import { isFileName, slugOf } from './names.ts'
import { unzip, zip } from './zip.ts'

/** A conversion as it leaves and comes back: its text, and the files beside it with what they hold. */
export type Bundle = {
  readonly text: string
  readonly files: Readonly<Record<string, Uint8Array>>
  readonly from?: { readonly id: string; readonly revision: number }
}

const ABOUT = 'ampwright.json'
const TEXT = /^[^/]+\.conversion\.yaml$/
/** All files of one conversion together [bytes]. */
export const MOST_BUNDLE = 400_000_000

/** One file: a plain zip with the text, what stands beside it, and `ampwright.json` that says what it is. */
export function bundled(name: string, { text, files, from }: Bundle): Buffer {
  const sums = Object.fromEntries(Object.entries(files).map(([file, bytes]) => [file, hashOf(bytes)])),
    textFile = `${slugOf(name)}.conversion.yaml`,
    bytes = Buffer.from(text, 'utf8')
  const about = { format: 1, conversion: textFile, sha256: hashOf(bytes), ...(from ? { from } : {}), files: sums }
  return zip([
    { name: ABOUT, bytes: Buffer.from(`${JSON.stringify(about, null, 2)}\n`) },
    { name: textFile, bytes },
    ...Object.entries(files).map(([file, content]) => ({ name: file, bytes: content })),
  ])
}

/** What a bundle holds. A zip without `ampwright.json` is read too, where exactly one conversion text lies in it. */
export function unbundled(file: Buffer): Bundle {
  const entries = unzip(file, MOST_BUNDLE),
    texts = entries.filter(e => TEXT.test(e.name)),
    [text] = texts
  if (!text || texts.length > 1) throw refused(`it holds ${texts.length} conversion texts; one NAME.conversion.yaml is wanted`)
  if (text.bytes.length > MAX_BYTES) throw refused(`its text has ${text.bytes.length} bytes; at most ${MAX_BYTES} are read`)
  const about = aboutOf(entries.find(e => e.name === ABOUT)?.bytes)
  const files: [string, Uint8Array][] = []
  for (const { name, bytes } of entries) {
    if (name === ABOUT || name === text.name) continue
    if (!isFileName(name.normalize('NFC'))) throw refused('the name of a file in it is not accepted')
    files.push([name.normalize('NFC'), bytes])
  }
  for (const [name, bytes] of files)
    if (about.files && Object.hasOwn(about.files, name) && about.files[name] !== hashOf(bytes))
      throw refused(`«${name}» is not what it was`)
  return { text: decoded(text.bytes), files: Object.fromEntries(files), ...(about.from ? { from: about.from } : {}) }
}

function decoded(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)
  } catch {
    throw refused('its text is not UTF-8')
  }
}

type About = { readonly files?: Readonly<Record<string, string>>; readonly from?: { readonly id: string; readonly revision: number } }

function aboutOf(bytes: Uint8Array | undefined): About {
  if (!bytes) return {}
  let said: unknown
  try {
    said = JSON.parse(Buffer.from(bytes).toString('utf8'))
  } catch {
    throw refused('its ampwright.json cannot be read')
  }
  if (typeof said !== 'object' || said === null || !('format' in said)) throw refused('its ampwright.json does not say its format')
  if (said.format !== 1) throw refused('it is of a newer format; update Ampwright')
  const files = 'files' in said && typeof said.files === 'object' && said.files !== null ? (said.files as Record<string, string>) : {}
  const from = 'from' in said ? (said.from as { id?: unknown; revision?: unknown } | null) : null
  return typeof from?.id === 'string' && Number.isInteger(from.revision)
    ? { files, from: { id: from.id, revision: from.revision as number } }
    : { files }
}

const refused = (why: string): StoreFault => new StoreFault('content', `This bundle cannot be taken: ${why}. Nothing was changed.`)
