import { type Issue, Refusal } from './issue.ts'
import { badByte, utf8Decoder } from './utf-8.ts'

export type Place = { readonly line: number; readonly column: number }

/** What a reader of text in pieces offers. `take` and `end` throw Refusal when it cannot go on; `refused` makes an answer of that. */
export type TextReader<T> = {
  readonly take: (text: string) => void
  readonly end: () => T
  readonly place: () => Place
  readonly refused: (issue: Issue) => T
}

/** Takes a file piece by piece, cut anywhere. `push` says whether more is wanted: not after a refusal. */
export type ByteReader<T> = { readonly push: (bytes: Uint8Array) => boolean; readonly end: () => T }

const PIECE = 65_536
const BYTE_ORDER_MARK = 0xfeff

/** Reads bytes through a reader of text, bounded in size. */
export function byteReader<T>(reader: TextReader<T>, mostBytes: number): ByteReader<T> {
  const decoder = utf8Decoder()
  let size = 0
  let issue: Issue | undefined
  const refuse = (words: Pick<Issue, 'what' | 'found' | 'accepted'>): never => {
    throw new Refusal({ ...reader.place(), path: '', ...words })
  }
  const guarded = <R>(action: () => R): R | undefined => {
    if (issue) return undefined
    try {
      return action()
    } catch (refusal) {
      if (!(refusal instanceof Refusal)) throw refusal
      issue = refusal.issue
      return undefined
    }
  }
  const pushPiece = (bytes: Uint8Array): void => {
    size += bytes.length
    if (size > mostBytes) refuse(tooLarge(`more than ${mostBytes} bytes`, mostBytes))
    const { text, bad } = decoder.push(bytes)
    reader.take(text)
    if (bad) refuse(badByte(bad))
  }
  const finish = (): T => {
    const bad = decoder.end()
    return bad ? refuse(badByte(bad)) : reader.end()
  }
  return {
    push: bytes => {
      for (let i = 0; i < bytes.length; i += PIECE) guarded(() => pushPiece(bytes.subarray(i, i + PIECE)))
      return issue === undefined
    },
    end: () => {
      const answer = guarded(finish)
      return issue ? reader.refused(issue) : (answer as T)
    },
  }
}

/** Reads a whole file, bytes or text, through a reader of text. */
export function readWhole<T>(reader: TextReader<T>, input: Uint8Array | string, mostBytes: number): T {
  if (input.length > mostBytes) return reader.refused({ line: 1, column: 1, path: '', ...tooLarge(`${input.length} bytes`, mostBytes) })
  if (typeof input !== 'string') {
    const bytes = byteReader(reader, mostBytes)
    bytes.push(input)
    return bytes.end()
  }
  try {
    for (let i = input.charCodeAt(0) === BYTE_ORDER_MARK ? 1 : 0; i < input.length; i += PIECE) reader.take(input.slice(i, i + PIECE))
    return reader.end()
  } catch (refusal) {
    if (refusal instanceof Refusal) return reader.refused(refusal.issue)
    throw refusal
  }
}

function tooLarge(found: string, most: number): Pick<Issue, 'what' | 'found' | 'accepted'> {
  return { what: 'the file is too large', found, accepted: `at most ${most} bytes` }
}
