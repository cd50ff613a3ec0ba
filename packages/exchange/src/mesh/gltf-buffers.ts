import { quoted } from '../issue.ts'
import { badByte, utf8Decoder } from '../utf-8.ts'
import { base64 } from './base64.ts'
import { JsonPart } from './json-parts.ts'
import { refuse } from './mesh-file.ts'

/** The document of a glTF file, the lists its meshes are made of, and the bytes it carries. */
export type GltfParts = {
  readonly document: JsonPart
  readonly accessors: readonly JsonPart[]
  readonly views: readonly JsonPart[]
  readonly buffers: readonly JsonPart[]
  readonly bytesOf: readonly (() => Uint8Array)[]
}

const GLB_MAGIC = 0x46546c67
const JSON_CHUNK = 0x4e4f534a
const BINARY_CHUNK = 0x004e4942
/** A document within a GLB holds names and numbers of lists, not the lists; texts in a glTF hold them all. */
const LONGEST_TEXT = 400_000_000

/** Whether a file begins as a GLB does. */
export const isGlb = (bytes: Uint8Array): boolean => bytes.length >= 4 && viewOf(bytes).getUint32(0, true) === GLB_MAGIC

/** Takes a GLB, or a glTF document with its buffers inside, apart. Throws MeshRefusal. */
export function gltfParts(bytes: Uint8Array): GltfParts {
  const { text, binary } = isGlb(bytes) ? chunks(bytes) : { text: bytes, binary: undefined }
  const document = new JsonPart(parsed(text), '')
  const buffers = document.at('buffers').list()
  return {
    document,
    accessors: document.at('accessors').list(),
    views: document.at('bufferViews').list(),
    buffers,
    bytesOf: buffers.map((buffer, i) => {
      let bytes: Uint8Array | undefined
      return () => {
        bytes ??= i === 0 && !buffer.has('uri') && binary ? binary : embedded(buffer)
        if (bytes.length < buffer.at('byteLength').whole())
          refuse(buffer.where, 'a buffer is cut off', `${bytes.length} bytes`, `${buffer.at('byteLength').whole()} bytes`)
        return bytes
      }
    }),
  }
}

const viewOf = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)

function chunks(bytes: Uint8Array): { readonly text: Uint8Array; readonly binary: Uint8Array | undefined } {
  const view = viewOf(bytes)
  if (bytes.length < 20) refuse(`byte ${bytes.length}`, 'the file is cut off', `${bytes.length} bytes`, 'a GLB header and a document')
  const version = view.getUint32(4, true),
    length = view.getUint32(8, true)
  if (version !== 2) refuse('byte 4', 'the version is not accepted', `${version}`, '2')
  if (length > bytes.length)
    refuse(`byte ${bytes.length}`, 'the file is cut off', `${bytes.length} bytes`, `${length} bytes, as its header says`)
  let text: Uint8Array | undefined, binary: Uint8Array | undefined
  for (let at = 12; at + 8 <= length; ) {
    const size = view.getUint32(at, true),
      kind = view.getUint32(at + 4, true)
    at += 8
    if (at + size > length) refuse(`byte ${at}`, 'a chunk is cut off', `${length - at} bytes`, `${size} bytes`)
    if (kind === JSON_CHUNK) text ??= bytes.subarray(at, at + size)
    else if (kind === BINARY_CHUNK) binary ??= bytes.subarray(at, at + size)
    at += size + ((4 - (size % 4)) % 4)
  }
  return { text: text ?? refuse('byte 12', 'the file holds no document', 'no JSON chunk', 'one'), binary }
}

function parsed(bytes: Uint8Array): unknown {
  if (bytes.length > LONGEST_TEXT)
    refuse('the document', 'the document is too large', `${bytes.length} bytes`, `at most ${LONGEST_TEXT} bytes; save it as GLB`)
  const decoder = utf8Decoder(),
    { text, bad } = decoder.push(bytes),
    wrong = bad ?? decoder.end()
  if (wrong) {
    const { what, found, accepted } = badByte(wrong)
    refuse('the document', what, found, accepted)
  }
  try {
    return JSON.parse(text)
  } catch {
    return refuse('the document', 'the document is no JSON', quoted(text.slice(0, 40)), 'a glTF document')
  }
}

function embedded(buffer: JsonPart): Uint8Array {
  const uri = buffer.at('uri').text()
  if (uri === undefined) return refuse(buffer.where, 'a buffer holds nothing', 'neither an address nor bytes of a GLB', 'its bytes')
  const head = /^data:[^,]{0,200};base64,/.exec(uri)
  if (!head)
    refuse(`${buffer.where}.uri`, 'a buffer lies in another file', quoted(uri.slice(0, 80)), 'everything in one file: save it as GLB')
  return (
    base64(uri, (head as RegExpExecArray)[0].length) ??
    refuse(`${buffer.where}.uri`, 'a buffer is no base64', quoted(uri.slice(0, 40)), 'base64')
  )
}
