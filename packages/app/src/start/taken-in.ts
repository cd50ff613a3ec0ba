import type { ApiClash, ApiConversionLine, ApiImported } from '@ampwright/server'

/** What became of a file that was taken in, in words. */
export type TakenIn = {
  readonly says: string
  readonly id: string
  readonly open: string
  /** Places that both changed, each with both values. */
  readonly clashes: readonly { readonly path: string; readonly file: string; readonly here: string }[]
  readonly more?: string
}

/** Tells an answer of the import; `list` are the conversions there are by now. */
export function takenIn(answer: ApiImported, list: readonly ApiConversionLine[]): TakenIn {
  const line = list.find(c => c.id === answer.id),
    origin = list.find(c => c.id === line?.variant?.of)
  const name = named(line),
    more = answer.layoutLeftOut ? 'Comments or layout of the file could not be merged and are left out.' : undefined
  return {
    says: SAYS[answer.as](name, named(origin), answer),
    id: answer.id,
    open: answer.as === 'variant' ? `Open the variant ${line?.variant?.named ?? ''}`.trim() : `Open ${name}`,
    clashes: answer.clashes.map(({ path, yours, theirs }) => ({ path, file: inOneLine(yours), here: inOneLine(theirs) })),
    ...(more === undefined ? {} : { more }),
  }
}
const named = (c: ApiConversionLine | undefined): string => c?.name || 'the car without a name'

const SAYS: Readonly<Record<ApiImported['as'], (name: string, origin: string, a: ApiImported) => string>> = {
  new: name => `New: ${name} is a conversion of its own now.`,
  merged: (name, _, { revision }) => `Merged: what the file changed is in ${name} now, as revision ${revision}.`,
  unchanged: name => `Unchanged: ${name} says all that the file says.`,
  variant: (_, origin, { clashes }) =>
    clashes.length
      ? `It became a variant of ${origin}, because both changed the same since the file was exported. ${origin} itself is as it was.`
      : `It became a variant of ${origin}; ${origin} itself is as it was.`,
}

/** A value of the file in one line. */
export function inOneLine(v: ApiClash['yours']): string {
  if (v === null) return 'nothing'
  if (typeof v === 'string') return v
  if (Array.isArray(v)) return v.join(', ')
  return Object.entries(v)
    .map(([k, x]) => `${k}: ${String(x)}`)
    .join(', ')
}

/** Whether bytes begin as a bundle (a zip file) does. */
export const isBundle = (first: Uint8Array): boolean => first[0] === 0x50 && first[1] === 0x4b && first[2] === 3 && first[3] === 4

/** What a file is called, without what only says its kind. */
export const bareName = (file: string): string =>
  file
    .replace(/(\.conversion)?\.(ya?ml|zip)$/i, '')
    .trim()
    .slice(0, 100) || 'taken in'

/** The least text of a conversion of that name. */
export const namedText = (name: string): string => `schema: 1\ncar: ${JSON.stringify(name)}\n`

/** Bytes as text; undefined where they are none. */
export function textOf(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)
  } catch {
    return undefined
  }
}
